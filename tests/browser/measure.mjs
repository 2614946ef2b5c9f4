// What is measured inside a page. Each function is sent to the browser whole, so it uses nothing from outside itself.

/** What makes the page, or a part of it, scroll sideways. */
export function sideways() {
  const root = document.documentElement, faults = [];
  const called = e => `${e.tagName.toLowerCase()}${e.id && `#${e.id}`}${[...e.classList].map(c => `.${c}`).join('')}`;
  if (root.scrollWidth > root.clientWidth) {
    const wide = [...document.body.querySelectorAll('*')].filter(e => e.getBoundingClientRect().right > root.clientWidth + 1);
    faults.push(`scrolls sideways: ${root.scrollWidth} > ${root.clientWidth} px, by ${wide.slice(-4).map(called).join(', ')}`);
  }
  for (const e of document.body.querySelectorAll('*')) {
    const scrolls = ['auto', 'scroll', 'hidden', 'clip'].includes(getComputedStyle(e).overflowX);
    // Text kept for screen readers alone lies in a box of one pixel.
    if (scrolls && e.checkVisibility() && e.clientWidth > 1 && !e.matches('input, select') && e.scrollWidth > e.clientWidth + 1) faults.push(`holds more than it shows: ${called(e)} ${e.scrollWidth} > ${e.clientWidth} px`);
  }
  return faults;
}

/** What is pressed and is less than 44 px wide or high: WCAG 2.2, success criterion 2.5.5, with its exception for links in a sentence. */
export function small() {
  const LEAST = 44;
  const inSentence = link => {
    if (link.tagName !== 'A' || getComputedStyle(link).display !== 'inline') return false;
    let block = link.parentElement;
    while (getComputedStyle(block).display === 'inline') block = block.parentElement;
    return block.textContent.trim().length > link.textContent.trim().length;
  };
  // How far the pressing reaches is asked of the page itself, since a label or a whole row may stand in for its control.
  const reach = target => {
    const box = [...target.getClientRects()].find(one => one.width > 0);
    const middle = [box.left + box.width / 2, box.top + box.height / 2];
    const ours = (x, y) => {
      const hit = document.elementFromPoint(x, y);
      return hit && (target.contains(hit) || [...target.labels ?? []].some(label => label.contains(hit)));
    };
    const along = (dx, dy) => {
      let far = 0;
      while (far < LEAST && ours(middle[0] + dx * (far + 0.5), middle[1] + dy * (far + 0.5))) far += 1;
      return far;
    };
    return [along(-1, 0) + along(1, 0), along(0, -1) + along(0, 1)];
  };
  const faults = [];
  // The opened "More" lies over the page, whose own targets were measured while it was closed.
  const seen = document.querySelector('nav.foot details[open]') ?? document;
  for (const target of seen.querySelectorAll('a[href], button, input:not([type=hidden]), select, textarea, summary')) {
    // The link that skips to the page is seen only with the focus.
    if (target.matches('.skip')) target.focus();
    const box = target.getBoundingClientRect();
    if (box.width === 0 || !target.checkVisibility({ visibilityProperty: true }) || inSentence(target)) continue;
    if (box.width >= LEAST && box.height >= LEAST) continue;
    const [wide, high] = reach(target);
    if (wide < LEAST || high < LEAST) faults.push(`target of ${wide} x ${high} px: ${target.outerHTML.slice(0, 120)}`);
  }
  document.activeElement.blur();
  return faults;
}
