// One line an element: naming a tag is separate from its class, and doing it twice is harmless.
import { Today } from "./elements/today.js";

const elements = { "sw-today": Today };

for (const [name, element] of Object.entries(elements)) {
  if (!customElements.get(name)) customElements.define(name, element);
}
