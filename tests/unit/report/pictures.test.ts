/** Pictures of several runs, from small inputs: what their titles, tables and lines say. */
import { describe, expect, it, test } from 'vitest';
import { receiverContent } from '../../../src/report/pictures/receiver.ts';
import { startMapFigure, type StartFate } from '../../../src/report/pictures/start-map.ts';
import { torqueSpeedContent } from '../../../src/report/pictures/torque-speed.ts';
import { inUnits } from '../../../src/quantity/unit-system.ts';
import { receiverCourse, torqueSpeed, triedStarts } from './picture-samples.ts';

const plainText = (markup: string): string => markup.replace(/<[^>]+>/gu, ' ').replace(/\s+/gu, ' ');

describe('the start map', () => {
  const { text } = startMapFigure(triedStarts);

  it('says from where to start, and puts borders half way between the places that were tried', () => {
    expect(plainText(text)).toContain('It starts from 17 % of the turn; set the crank between 15° and 75°');
    const rows = [...text.matchAll(/<th scope="row">([^<]+)<\/th>\s*<td>([^<]+)<\/td><td>([^<]+)<\/td>/gu)];
    expect(rows.map(([, from, to, fate]) => `${from} ${to} ${fate}`)).toEqual([
      '15° 75° starts and runs',
      '75° 105° moves, then stops',
      '105° 295° does not move',
      '295° 345° turns the wrong way',
      '345° 15° does not move',
    ]);
    expect(text.match(/<path class="arc fate-[a-z]+" d="M[\d.]+ [\d.]+A/gu)).toHaveLength(5);
  });

  const everywhere = (fate: StartFate): string =>
    plainText(startMapFigure(triedStarts.map((tried) => ({ ...tried, fate }))).text);

  it('knows engines that start everywhere and nowhere', () => {
    expect(everywhere('runs')).toContain('It starts from every place of the crank that was tried');
    expect(everywhere('stays')).toContain('It starts by itself from no place');
  });

  it('has a pattern of its own for every fate', () => {
    expect(new Set(text.match(/fate-[a-z]+/gu))).toEqual(
      new Set(['fate-runs', 'fate-stops', 'fate-stays', 'fate-backwards']),
    );
  });
});

describe('torque against speed', () => {
  it('says where it runs and where most is to spare', () => {
    const { body, charts } = torqueSpeedContent(torqueSpeed);
    // 3 − 1.2/36 less 1.3 + 0.5/6 at 50 rpm.
    expect(plainText(body.text)).toContain('at 300 rpm; the engine has most to spare at 50.0 rpm, 1.58 N·m');
    expect(charts?.[0]?.marks).toEqual([{ at: 300, label: 'settles at 300 rpm' }]);
    expect(charts?.[0]?.lines.map(({ values }) => values.length)).toEqual([21, 21]);
  });

  it('says when the load is too much', () => {
    const { settled: _none, ...curve } = torqueSpeed;
    const { body } = torqueSpeedContent({ ...curve, load: Array.from(curve.speed, () => 5) });
    expect(plainText(body.text)).toContain('At no speed does the engine turn more than the load asks');
  });

  it('can be had in pounds and feet', () => {
    const [chart] = inUnits('imperial', () => torqueSpeedContent(torqueSpeed)).charts ?? [];
    expect(chart?.y.label).toBe('Torque [lbf·ft]');
    // 3 − 1.2/36 N·m over 1.355818.
    expect(chart?.lines[0]?.values[0]).toBeCloseTo(2.1881, 4);
  });
});

test('the receiver over minutes says when it is lowest, where the compressor starts, and how fast the engine is', () => {
  const { body, charts } = receiverContent(receiverCourse);
  expect(plainText(body.text)).toContain('lowest after 20 minutes, at 4.79 bar gauge');
  expect(plainText(body.text)).toContain('The engine does between 292 and 300');
  expect(charts?.map(({ marks }) => marks)).toEqual(Array(2).fill([{ at: 5, label: 'compressor starts' }]));
  expect(charts?.[0]?.x.values.at(-1)).toBe(20);
});
