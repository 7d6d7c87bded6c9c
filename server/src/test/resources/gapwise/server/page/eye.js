// What an eye would refuse on the page that is open: arguments are the width of the window and what to
// look for ("all", "contrast", "width"); the answer is a list of faults. Text in drawings that stand on
// their light card is left to the tests of figures.
const [width, what] = arguments;
const faults = [];
const root = document.documentElement;

if (what !== 'contrast' && root.scrollWidth > width) {
  const right = [...document.querySelectorAll('body *')]
    .filter(one => one.checkVisibility() && one.getBoundingClientRect().right > width + 1)
    .slice(0, 3).map(one => one.tagName + '.' + one.className);
  faults.push('the page is wider: ' + root.scrollWidth + ' ' + right);
}
if (what === 'width') return faults;

// Any colour as four numbers, by drawing it.
const pen = Object.assign(document.createElement('canvas'), {width: 1, height: 1})
  .getContext('2d', {willReadFrequently: true});
const known = new Map();
function numbers(colour) {
  if (!known.has(colour)) {
    pen.clearRect(0, 0, 1, 1);
    pen.fillStyle = colour;
    pen.fillRect(0, 0, 1, 1);
    const [r, g, b, a] = pen.getImageData(0, 0, 1, 1).data;
    known.set(colour, [r, g, b, a / 255]);
  }
  return known.get(colour);
}
const over = (top, below) => [0, 1, 2].map(i => top[i] * top[3] + below[i] * (1 - top[3]));
const grounds = new Map();
function ground(element) {
  if (element === null) {
    return matchMedia('(prefers-color-scheme: dark)').matches ? [0, 0, 0] : [255, 255, 255];
  }
  if (!grounds.has(element)) {
    const own = numbers(getComputedStyle(element).backgroundColor);
    grounds.set(element, own[3] === 1 ? own.slice(0, 3) : over(own, ground(element.parentElement)));
  }
  return grounds.get(element);
}
// WCAG 2.2, definitions of relative luminance and contrast ratio.
const light = colour => colour
  .map(part => part / 255)
  .map(part => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)
  .reduce((sum, part, i) => sum + part * [0.2126, 0.7152, 0.0722][i], 0);
function contrast(one, other) {
  const [a, b] = [light(one), light(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
function seen(element) {
  return element.checkVisibility({opacityProperty: true, visibilityProperty: true})
    && !element.closest('.unseen, .skip, option, .figure svg, svg.years, svg.span')
    && !(element.closest('thead') && getComputedStyle(element.closest('thead')).clipPath !== 'none');
}
const short = text => text.trim().replace(/\s+/g, ' ').slice(0, 40);
const said = new Set();
function judge(element, style, text) {
  const drawn = element.ownerSVGElement;
  const colour = numbers(drawn ? style.fill : style.color);
  const behind = ground(element);
  const found = contrast(over(colour, behind), behind);
  const key = style.color + behind + style.fontSize + element.tagName + element.className;
  if (said.has(key)) return;
  if (found < 4.5) {
    said.add(key);
    faults.push('pale, ' + found.toFixed(2) + ': ' + short(text));
  }
  const size = parseFloat(style.fontSize) * (drawn ? element.getScreenCTM().a : 1);
  if (what === 'all' && size < 12 - 1e-3) {
    said.add(key);
    faults.push('small: ' + size.toFixed(1) + ' ' + short(text));
  }
}

const places = new Map();
const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
for (let node = walk.nextNode(); node; node = walk.nextNode()) {
  const element = node.parentElement;
  if (node.data.trim() === '' || ['SCRIPT', 'STYLE', 'TITLE'].includes(element.tagName) || !seen(element)) continue;
  const range = document.createRange();
  range.selectNodeContents(node);
  const boxes = [...range.getClientRects()].filter(box => box.width > 1 && box.height > 1);
  if (boxes.length === 0) continue;
  judge(element, getComputedStyle(element), node.data);
  const place = element.closest('tr, header');
  if (place) places.set(place, [...(places.get(place) || []), {text: node.data, boxes}]);
}
for (const element of document.querySelectorAll('[data-head], input[placeholder], li')) {
  const style = getComputedStyle(element, element.placeholder ? '::placeholder' : '::before');
  if (seen(element) && (element.placeholder || !['none', 'normal', '""'].includes(style.content))) {
    judge(element, style, 'said beside ' + (element.placeholder || element.textContent));
  }
}
if (what === 'all') {
  const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2
    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 3;
  for (const texts of places.values()) {
    texts.forEach((one, i) => texts.slice(i + 1)
      .filter(other => one.boxes.some(a => other.boxes.some(b => meet(a, b))))
      .forEach(other => faults.push('overlap: ' + short(one.text) + ' | ' + short(other.text))));
  }
}
return faults;
