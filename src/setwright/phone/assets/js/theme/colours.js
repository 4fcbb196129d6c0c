// The member's choice of light or dark, before anything is drawn: no module, so that the page waits for it.
{
  /** @type {{color?: Record<string, unknown>} | null} */
  const chosen = /** @type {any} */ (window).__md_get("__palette");
  const colours = { ...chosen?.color };
  if (colours.media === "(prefers-color-scheme)") {
    // As the device has it: the button of that scheme knows the colours.
    const light = matchMedia("(prefers-color-scheme: light)").matches;
    const button = document.querySelector(`[data-md-color-media='(prefers-color-scheme: ${light ? "light" : "dark"})']`);
    for (const name of ["media", "scheme", "primary", "accent"]) colours[name] = button?.getAttribute(`data-md-color-${name}`);
  }
  for (const [name, value] of Object.entries(colours)) {
    if (/^[a-z]+$/.test(name)) document.body.setAttribute(`data-md-color-${name}`, String(value));
  }
}
