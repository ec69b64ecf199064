/** A key at the top of the file makes it a job; other YAML in a folder is none of ours. */
export const IS_JOB = /^\uFEFF?["']?putback["']?\s*:/m;
