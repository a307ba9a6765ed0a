/** Pictures of several runs, from small inputs: what their titles, tables and lines say. */
import { describe, expect, it, test } from 'vitest';
import { startsCsv, torqueCsv } from '../../../src/report/csv/drive-csv.ts';
import { receiverContent } from '../../../src/report/pictures/receiver.ts';
import { startMapFigure } from '../../../src/report/pictures/start-map.ts';
import { torqueSpeedContent } from '../../../src/report/pictures/torque-speed.ts';
import type { StartPosition } from '../../../src/run/drive-result.ts';
import { inUnits } from '../../../src/quantity/unit-system.ts';
import { receiverCourse, sampleDrive, sampleStarts } from './picture-samples.ts';

const plainText = (markup: string): string => markup.replace(/<[^>]+>/gu, ' ').replace(/\s+/gu, ' ');

describe('the start map', () => {
  const { text } = startMapFigure(sampleStarts);

  it('says from where to start, and puts borders half way between the places that were tried', () => {
    expect(plainText(text)).toContain(
      'It starts by itself from 17 % of the turn; set the crank between 15° and 75°',
    );
    const cell = '<td>([^<]+)</td>';
    const rows = [
      ...text.matchAll(new RegExp(`<th scope="row">([^<]+)</th>\\s*${cell}${cell}${cell}`, 'gu')),
    ];
    expect(rows.map(([, ...cells]) => cells.join(' | '))).toEqual([
      '15° | 75° | starts by itself | –',
      '75° | 195° | wants a push | 40.0 rpm to 150 rpm',
      '195° | 15° | does not start | –',
    ]);
    expect(text.match(/<path class="arc start-[a-z]+" d="M[\d.]+ [\d.]+A/gu)).toHaveLength(3);
    expect(text.match(/<path class="push"/gu)).toHaveLength(12);
    expect(plainText(text)).toContain('in 4.00 s to 4.00 s');
  });

  const everywhere = (change: Partial<StartPosition>): string => {
    const positions = sampleStarts.positions.map(({ crankAngle }) => ({
      crankAngle,
      startsUnaided: false,
      ...change,
    }));
    return plainText(startMapFigure({ positions, unaidedShare: change.startsUnaided === true ? 1 : 0 }).text);
  };

  it('knows engines that start everywhere, with a push only, and nowhere', () => {
    expect(everywhere({ startsUnaided: true, push: 0 })).toContain('It starts by itself from every place');
    expect(everywhere({ push: 2 * Math.PI })).toContain('the easiest push is 60.0 rpm, from 0°');
    expect(everywhere({})).toContain('It starts from no place of the crank, pushed or not');
  });

  it('comes as a table too', () => {
    const [head, first, , third, ...others] = startsCsv(sampleDrive).trimEnd().split('\r\n');
    expect(head).toBe('crank_angle_deg,starts_unaided,push_rpm,time_to_speed_s');
    expect([first, third]).toEqual(['0,0,,', '20,1,0,4']);
    expect(others).toHaveLength(33);
    expect(others).toContain('80,0,40,6');
  });
});

describe('torque against speed', () => {
  it('says where engine and load agree, and what stalls it', () => {
    const { body, charts } = torqueSpeedContent(sampleDrive);
    // 3 − 1.2/36 at 50 rpm.
    expect(plainText(body.text)).toContain('Engine and load agree at 300 rpm; it takes 2.97 N·m to stall it');
    expect(charts?.[0]?.marks).toEqual([{ at: 300, label: 'runs at 300 rpm' }]);
    const [own, load, tight] = charts?.[0]?.lines ?? [];
    expect([own, load, tight].map((line) => line?.values.length)).toEqual([21, 21, 21]);
    expect(tight?.values.slice(17)).toEqual([expect.any(Number), null, null, null]);
  });

  it('says when the load is too much, and when there is none', () => {
    const none = { ...sampleDrive, operatingPoints: [] };
    const heavy = torqueSpeedContent({ ...none, load: none.load.map(() => 5) });
    expect(plainText(heavy.body.text)).toContain('At no speed does the engine turn more than the load asks');
    const light = torqueSpeedContent({ ...none, load: none.load.map(() => -5) });
    expect(plainText(light.body.text)).toContain('The load asks less than the engine turns at every speed');
  });

  it('can be had in pounds and feet', () => {
    const [chart] = inUnits('imperial', () => torqueSpeedContent(sampleDrive)).charts ?? [];
    expect(chart?.y.label).toBe('Torque [lbf·ft]');
    // 3 − 1.2/36 N·m over 1.355818.
    expect(chart?.lines[0]?.values[0]).toBeCloseTo(2.1881, 4);
  });

  it('comes as a table too, with empty cells where a curve ends', () => {
    const rows = torqueCsv(sampleDrive).trimEnd().split('\r\n');
    expect(rows).toHaveLength(22);
    expect(rows[11]).toBe('300,1.8,1.8,2.2,0.314159');
    expect(rows[21]).toMatch(/^550,-1\.03333,[\d.]+,,/u);
  });
});

test('the receiver over minutes says when it is lowest, where the compressor starts, and how fast the engine is', () => {
  const { body, charts } = receiverContent(receiverCourse);
  expect(plainText(body.text)).toContain('lowest after 20 minutes, at 4.79 bar gauge');
  expect(plainText(body.text)).toContain('The engine does between 292 and 300');
  expect(charts?.map(({ marks }) => marks)).toEqual(Array(2).fill([{ at: 5, label: 'compressor starts' }]));
  expect(charts?.[0]?.x.values.at(-1)).toBe(20);
});
