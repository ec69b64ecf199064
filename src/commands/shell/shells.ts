/** The scripts that make a shell ask putback what can stand at a place of its command line. */

export const SHELLS = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof SHELLS)[number];

/** Each asks `putback completions SHELL WORD…` and shows the answer: a word a line, its meaning behind ` -- `. */
export const SCRIPTS: Readonly<Record<Shell, string>> = {
  bash: `# In ~/.bashrc: eval "$(putback completions bash)"
_putback() {
  local IFS=$'\\n' words=("\${COMP_WORDS[@]:1:COMP_CWORD}") found
  found=$(putback completions bash -- "\${words[@]}" 2>/dev/null | sed 's/ -- .*//')
  COMPREPLY=($found)
  compopt -o filenames 2>/dev/null
  [[ \${COMPREPLY[0]} == */ ]] && compopt -o nospace 2>/dev/null
}
complete -F _putback putback`,
  zsh: `# In ~/.zshrc, after compinit: eval "$(putback completions zsh)"
_putback() {
  local -a words_ found
  words_=("\${(@)words[2,CURRENT]}")
  local line word say
  while IFS= read -r line; do
    word=\${line%% -- *} say=
    [[ $line == *' -- '* ]] && say=\${line#* -- }
    if [[ $word == */ ]]; then compadd -S '' -- "$word"
    else found+=("\${word//:/\\\\:}\${say:+:$say}"); fi
  done < <(putback completions zsh -- "\${words_[@]}" 2>/dev/null)
  (( \${#found} )) && _describe putback found
}
compdef _putback putback`,
  fish: `# In ~/.config/fish/completions/putback.fish: putback completions fish | source
function __putback
  set -l typed (commandline -opc)[2..-1] (commandline -ct)
  putback completions fish -- $typed 2>/dev/null | string replace ' -- ' \\t
end
complete -c putback -f -a '(__putback)'`,
};
