/** Upright lines at the events of the turn, their names above the chart in two rows. */
import type uPlot from 'uplot';
import type { ChartMark } from '../charts/chart.ts';
import { canvasFont, token } from './looks.ts';

const ROW_HEIGHT = 15;

export function marksPlugin(marks: readonly ChartMark[]): uPlot.Plugin {
  const inOrder = [...marks].sort((a, b) => a.at - b.at);
  return {
    hooks: {
      drawClear: (plot) => {
        plot.ctx.save();
        inOrder.forEach((mark, i) => drawMark(plot, mark, i % 2));
        plot.ctx.restore();
      },
    },
  };
}

function drawMark(plot: uPlot, { at, label }: ChartMark, row: number): void {
  const { ctx, bbox } = plot;
  const x = Math.round(plot.valToPos(at, 'x', true));
  const top = label === undefined ? bbox.top : bbox.top - (row * ROW_HEIGHT + 4) * devicePixelRatio;
  ctx.strokeStyle = token('--mark');
  ctx.lineWidth = devicePixelRatio;
  ctx.setLineDash([]);
  ctx.beginPath();
  ctx.moveTo(x, top);
  ctx.lineTo(x, bbox.top + bbox.height);
  ctx.stroke();
  if (label !== undefined) drawLabel(ctx, label, x, top, x > bbox.left + bbox.width / 2);
}

function drawLabel(
  ctx: CanvasRenderingContext2D,
  label: string,
  x: number,
  y: number,
  before: boolean,
): void {
  ctx.font = canvasFont(12 * devicePixelRatio);
  ctx.fillStyle = token('--text');
  ctx.textAlign = before ? 'right' : 'left';
  ctx.textBaseline = 'bottom';
  ctx.fillText(label, x + (before ? 4 : -4) * devicePixelRatio, y);
}
