// The sentences of the site's language by their English form. English needs none; another language's file is served here.

/** For days and numbers, as BCP 47 has it. */
export const LANGUAGE = "en-GB";

/** @type {Record<string, string[]>} */
export const SENTENCES = {};

/**
 * Which form of a sentence goes with a count.
 * @param {number} n
 * @returns {number}
 */
export const plural = (n) => Number(n !== 1);
