// Files that a member saves and opens. They are made and read on the device.
import { say } from "../words.js";

/**
 * @param {string} name
 * @param {string} type
 * @param {string} text
 */
export function save(name, type, text) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** More than any device keeps of a log. */
const MOST_BYTES = 20_000_000;

/**
 * @param {string} accept
 * @returns {Promise<string | undefined>} its text, nothing where none was chosen; a far too big file reads as none of ours
 */
export function open(accept) {
  return new Promise((resolve) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = accept;
    input.addEventListener("change", async () => {
      const file = input.files?.[0];
      resolve(!file ? undefined : file.size > MOST_BYTES ? " " : await file.text());
    });
    input.click();
  });
}

/**
 * Ask whether a file of another club is to be restored; one of this club, or of none, is.
 * @param {unknown} of the club that the file names
 * @param {string} here this club
 */
export function isWanted(of, here) {
  if (typeof of !== "string" || of === "" || of === here) return true;
  return confirm(say("This file is of %(other)s, and these pages are of %(here)s. Restore it here all the same?", { other: of.slice(0, LONGEST_NAME), here }));
}

const LONGEST_NAME = 70;

/**
 * A name for a file: letters, figures and hyphens.
 * @param {string} words
 */
export function fileName(words) {
  return words.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "");
}
