/// <reference lib="dom" />

import type { PictureRoom } from '../../../src/index.ts';
import { type Inks, SIGN_FACE } from './picture-inks.ts';

/** Where a place of the picture is on the screen, in CSS pixels. */
export type ToScreen = (place: { readonly x: number; readonly y: number }) => {
  readonly x: number;
  readonly y: number;
};

export type Box = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };

const SKIN = 0.8;
const WHEEL = 1.5;
const EDGE = 0.5;
const TITLE_PX = 17;
const LEAST_TITLE_PX = 6;

/** The van around its rooms. */
export function bodyOf(rooms: readonly PictureRoom[]): Box {
  const inside = rooms.filter((room) => !room.outside);
  return {
    left: Math.min(...inside.map(({ x }) => x)) - SKIN,
    right: Math.max(...inside.map(({ x, wide }) => x + wide)) + SKIN,
    top: Math.max(...inside.map(({ y }) => y)) + SKIN,
    bottom: Math.min(...inside.map(({ y, high }) => y - high)) - SKIN,
  };
}

/** All that is drawn. */
export function extentOf(rooms: readonly PictureRoom[]): Box {
  const body = bodyOf(rooms);
  return {
    left: body.left - EDGE,
    top: body.top + EDGE,
    right: EDGE + Math.max(body.right, ...rooms.map(({ x, wide }) => x + wide)),
    bottom: Math.min(body.bottom, ...rooms.map(({ y, high }) => y - high)),
  };
}

/** Draws the van cut open: its skin and wheels, a room for each system with its name, the ground with what stands on it. */
export function drawRooms(
  pen: CanvasRenderingContext2D,
  rooms: readonly PictureRoom[],
  at: ToScreen,
  inks: Inks,
): void {
  const { width, height } = pen.canvas;
  pen.clearRect(0, 0, width, height);
  const body = bodyOf(rooms);
  const upper = at({ x: body.left, y: body.top });
  const lower = at({ x: body.right, y: body.bottom });
  const unit = (lower.x - upper.x) / (body.right - body.left);
  const ground = at({ x: 0, y: body.bottom - WHEEL * 0.8 }).y;
  pen.fillStyle = inks.grass;
  pen.fillRect(0, ground, width, height);
  pen.fillStyle = inks.ink;
  pen.fillRect(0, ground, width, 2);
  for (const share of [0.52, 0.62]) {
    pen.beginPath();
    pen.arc(upper.x + share * (lower.x - upper.x), lower.y + unit * 0.1, unit * WHEEL, 0, 2 * Math.PI);
    pen.fill();
  }
  pen.beginPath();
  pen.roundRect(upper.x, upper.y, lower.x - upper.x, lower.y - upper.y, [4 * unit, 1.2 * unit, unit, unit]);
  pen.fillStyle = inks.paper;
  pen.fill();
  pen.lineWidth = Math.max(2, unit * 0.18);
  pen.strokeStyle = inks.ink;
  pen.stroke();
  for (const room of rooms) drawRoom(pen, room, at, inks, unit);
}

function drawRoom(pen: CanvasRenderingContext2D, room: PictureRoom, at: ToScreen, inks: Inks, unit: number): void {
  const { x, y } = at(room);
  const [wide, high] = [room.wide * unit, room.high * unit];
  const gap = unit * 0.15;
  pen.beginPath();
  pen.roundRect(x + gap, y + gap, wide - 2 * gap, high - 2 * gap, unit * 0.3);
  pen.fillStyle = inks.sheet;
  pen.fill();
  pen.lineWidth = 1;
  pen.strokeStyle = inks.rule;
  pen.stroke();
  const size = Math.min(TITLE_PX, unit * 0.85);
  if (size < LEAST_TITLE_PX) return;
  pen.font = `800 ${size}px ${SIGN_FACE}`;
  const across = pen.measureText(room.title).width;
  if (across > wide - unit) pen.font = `800 ${(size * (wide - unit)) / across}px ${SIGN_FACE}`;
  pen.fillStyle = inks.ink;
  pen.textBaseline = 'middle';
  pen.textAlign = 'left';
  pen.fillText(room.title, x + unit * 0.5, y + unit * 0.75);
}
