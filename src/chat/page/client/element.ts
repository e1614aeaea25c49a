type Content = Node | string;

/** A new element; strings become text, never markup. */
export function element<K extends keyof HTMLElementTagNameMap>(tag: K, className: string, ...content: Content[]): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  if (className !== '') made.className = className;
  made.append(...content);
  return made;
}

/** A part of the page that must be there. */
export function part<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`The page has no ${kind.name} #${id}`);
  return found;
}

const SVG = 'http://www.w3.org/2000/svg';

/** One of the drawn state marks; the word always stands beside it, so it says nothing to a screen reader. */
export function mark(name: string): SVGSVGElement {
  const drawing = document.createElementNS(SVG, 'svg');
  const use = document.createElementNS(SVG, 'use');
  use.setAttribute('href', `#mark-${name}`);
  drawing.setAttribute('class', 'mark');
  drawing.setAttribute('aria-hidden', 'true');
  drawing.append(use);
  return drawing;
}

/** A printed field: its caption stands small in the corner, what is in it below. */
export function field(caption: string, className: string, ...content: Content[]): HTMLDivElement {
  const made = element('div', `field ${className}`, ...content);
  made.dataset['caption'] = caption;
  return made;
}

/** A printed box to tap. */
export function tab(label: string, press: () => void): HTMLButtonElement {
  const made = element('button', 'tab', label);
  made.type = 'button';
  made.addEventListener('click', press);
  return made;
}
