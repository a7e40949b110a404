/// <reference lib="dom" />
/// <reference lib="dom.iterable" />

/*
 * Draws the graph as a van cut open, and opens what is touched beside it. The page's list has the same links: without
 * WebGL or scripting nothing is missing but the picture.
 */

import { createNodeBorderProgram } from '@sigma/node-border';
import { MultiDirectedGraph } from 'graphology';
import { Sigma } from 'sigma';
import type { DrawnThing, HeatBy, PictureData } from '../picture-data.ts';
import { inksNow } from './picture-inks.ts';
import { createLabels } from './picture-labels.ts';
import { drawRooms, extentOf } from './picture-rooms.ts';

const PART = 0.34;
const TOPIC = 0.2;
const HOTTEST = 0.2;
/** What the chosen van has not. */
const AWAY = 0.08;
/** Names are written once a thing has so many pixels for itself. */
const LABEL_FROM_PX = 58;
/** On a narrow screen one begins with so many units across, at the front of the van. */
const NARROW_UNITS = 18;
const NARROW_PX = 700;

const frame = document.getElementById('picture');
const shown = document.getElementById('thing');
if (frame !== null && hasWebGl()) {
  fetch(frame.dataset.from ?? '')
    .then(async (answer) => (answer.ok ? draw(frame, (await answer.json()) as PictureData) : undefined))
    .catch((error: unknown) => {
      frame.hidden = true;
      console.error('the picture cannot be drawn; the list has the same', error);
    });
}

function hasWebGl(): boolean {
  return document.createElement('canvas').getContext('webgl2') !== null;
}

function draw(frame: HTMLElement, { rooms, things, links }: PictureData): void {
  const by: HeatBy = frame.dataset.heat === 'failed' ? 'failed' : 'asked';
  const hottest = Math.max(1, ...things.map((thing) => (thing.kind === 'part' ? 0 : thing[by])));
  const byKey = new Map(things.map((thing) => [thing.key, thing]));
  const graph = new MultiDirectedGraph();
  for (const { key, name, x, y } of things) graph.addNode(key, { x, y, label: name });
  for (const [from, to, near] of links) {
    const [one, other] = [things[from], things[to]];
    if (one?.here === true && other?.here === true) graph.addEdge(one.key, other.key, { near: near === 1 });
  }
  let inks = inksNow();
  let chosen = '';
  let pointed = '';
  let unit = 0;
  const label = createLabels();
  for (const hidden of document.querySelectorAll<HTMLElement>('[data-with-picture]')) hidden.hidden = false;
  frame.hidden = false;

  const sigma = new Sigma(graph, frame, {
    defaultNodeType: 'disc',
    nodeProgramClasses: { disc: ringed() },
    nodeHoverProgramClasses: { disc: ringed() },
    itemSizesReference: 'positions',
    zoomToSizeRatioFunction: (ratio) => ratio,
    labelRenderedSizeThreshold: 0,
    labelDensity: 50,
    labelGridCellSize: 40,
    stagePadding: 8,
    minEdgeThickness: 1.5,
    minCameraRatio: 0.05,
    maxCameraRatio: 1.4,
    zIndex: true,
    nodeReducer: (key, { x, y }) => ({ x, y, ...look(byKey.get(key), key === chosen || key === pointed) }),
    edgeReducer: (edge, { near }) => {
      const touched = chosen !== '' && graph.hasExtremity(edge, chosen);
      return { hidden: near !== true && !touched, color: touched ? inks.ink : inks.rule, size: touched ? 0.06 : 0.02 };
    },
    defaultDrawNodeLabel: (pen, { key, x, y, size, label: name }) => {
      const strong = key === chosen || key === pointed;
      if (name != null && (strong || unit >= LABEL_FROM_PX))
        label(pen, name, { x, y, below: size, wide: Math.max(unit, strong ? 130 : 0) }, inks, strong);
    },
    defaultDrawNodeHover: () => {},
  });
  const { left, right, top, bottom } = extentOf(rooms);
  sigma.setCustomBBox({ x: [left, right], y: [bottom, top] });

  const pen = sigma.createCanvas('rooms', { beforeLayer: 'edges' }).getContext('2d');
  sigma.on('afterRender', () => {
    if (pen === null) return;
    const { width, height } = sigma.getDimensions();
    const fine = window.devicePixelRatio;
    const [across, down] = [Math.round(width * fine), Math.round(height * fine)];
    if (pen.canvas.width !== across || pen.canvas.height !== down) {
      pen.canvas.width = across;
      pen.canvas.height = down;
      pen.canvas.style.width = `${width}px`;
      pen.canvas.style.height = `${height}px`;
    }
    const at = (place: { readonly x: number; readonly y: number }) => sigma.graphToViewport(place);
    unit = at({ x: 1, y: 0 }).x - at({ x: 0, y: 0 }).x;
    // While the page is laid out anew the frame can be smaller than its padding.
    if (unit <= 0) return;
    pen.setTransform(fine, 0, 0, fine, 0, 0);
    drawRooms(pen, rooms, at, inks);
    // Where the picture's own zero is, and how large its unit: for tests that touch a thing.
    frame.dataset.view = JSON.stringify({ ...at({ x: 0, y: 0 }), unit });
  });

  function look(thing: DrawnThing | undefined, strong: boolean) {
    if (thing === undefined) return { hidden: true };
    const heat = Math.sqrt(Math.min(1, thing[by] / hottest));
    const size = !thing.here ? AWAY : (thing.kind === 'part' ? PART : TOPIC) + HOTTEST * heat;
    const color = !thing.here
      ? inks.rule
      : thing[by] > 0
        ? inks.marigold
        : thing.kind === 'symptom'
          ? inks.quiet
          : inks.sheet;
    const ring = !thing.here ? inks.rule : thing[by] > 0 ? inks.onMarigold : inks.ink;
    return {
      size,
      color: strong && thing.here ? inks.marigold : color,
      ring,
      label: thing.here ? thing.name : null,
      forceLabel: strong,
      zIndex: strong ? 2 : thing.kind === 'part' ? 1 : 0,
    };
  }

  sigma.on('enterNode', ({ node }) => {
    pointed = node;
    frame.style.cursor = 'pointer';
    sigma.refresh({ partialGraph: { nodes: [node] }, skipIndexation: true });
  });
  sigma.on('leaveNode', ({ node }) => {
    pointed = '';
    frame.style.cursor = '';
    sigma.refresh({ partialGraph: { nodes: [node] }, skipIndexation: true });
  });
  sigma.on('clickNode', ({ node }) => {
    chosen = node;
    sigma.refresh({ skipIndexation: true });
    open(frame, node);
  });
  for (const press of document.querySelectorAll<HTMLElement>('[data-camera]'))
    press.addEventListener('click', () => {
      const camera = sigma.getCamera();
      const calm = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
      const duration = calm ? 0 : 200;
      if (press.dataset.camera === 'in') camera.animatedZoom({ duration, factor: 1.6 });
      else if (press.dataset.camera === 'out') camera.animatedUnzoom({ duration, factor: 1.6 });
      else camera.animatedReset({ duration });
    });
  window.matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => {
    inks = inksNow();
    sigma.refresh();
  });
  if (frame.clientWidth < NARROW_PX) {
    const ratio = NARROW_UNITS / (right - left);
    sigma.getCamera().setState({ ratio, x: ratio / 2, y: 0.5 });
  }
  frame.dataset.ready = String(Math.round(performance.now()));
}

/** Fetches the thing's own page and shows its heart beside the picture. */
function open(frame: HTMLElement, key: string): void {
  if (shown === null) return;
  const [kind = '', id = ''] = key.split(':');
  fetch(`${frame.dataset.things}/${kind}/${encodeURIComponent(id)}${location.search}`)
    .then(async (answer) => {
      const page = new DOMParser().parseFromString(await answer.text(), 'text/html');
      const heart = page.getElementById('thing');
      if (heart === null) return;
      shown.replaceChildren(...heart.childNodes);
      shown.hidden = false;
      shown.scrollIntoView({ block: 'nearest' });
    })
    .catch(() => {
      shown.textContent = 'That could not be opened. Touch it again when you have a signal.';
      shown.hidden = false;
    });
}

function ringed() {
  return createNodeBorderProgram({
    borders: [
      { size: { value: 0.22 }, color: { attribute: 'ring' } },
      { size: { fill: true }, color: { attribute: 'color' } },
    ],
  });
}
