/** The scripts that make a shell ask putback what can stand at a place of its command line. */

export const SHELLS = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof SHELLS)[number];

/**
 * Each asks `putback completions SHELL --line LINE` with the line as far as it is typed, quotes and all, and shows
 * the answer: a word a line, its meaning behind a tab.
 */
export const SCRIPTS: Readonly<Record<Shell, string>> = {
  bash: `# In ~/.bashrc: eval "$(putback completions bash)"
_putback() {
  local word say
  COMPREPLY=()
  while IFS=$'\\t' read -r word say; do
    COMPREPLY+=("\${word%/}")
  done < <(putback completions bash --line="\${COMP_LINE:0:COMP_POINT}" 2>/dev/null)
}
complete -o filenames -F _putback putback`,
  zsh: `# In ~/.zshrc, after compinit: eval "$(putback completions zsh)"
_putback() {
  local -a found
  local word say
  while IFS=$'\\t' read -r word say; do
    if [[ $word == '~/'* ]]; then compadd -Q -S '' -- "~/\${(q)word#\\~/}"
    elif [[ $word == */ ]]; then compadd -S '' -- "$word"
    else
      word=\${word//\\\\/\\\\\\\\}
      found+=("\${word//:/\\\\:}\${say:+:$say}")
    fi
  done < <(putback completions zsh --line="\${(j: :)words[1,CURRENT-1]} \${words[CURRENT]}" 2>/dev/null)
  (( \${#found} )) && _describe putback found
}
compdef _putback putback`,
  fish: `# In ~/.config/fish/completions/putback.fish: putback completions fish | source
function __putback
  putback completions fish --line=(commandline -cp | string collect) 2>/dev/null
end
complete -c putback -f -a '(__putback)'`,
};
