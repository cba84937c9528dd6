import { seriesColours } from '../../workbook/look.ts';
import type { Chart } from '../../workbook/model.ts';
import { type Block, blockOf, placeOf } from '../pane/addresses.ts';
import { points } from './page-setup.ts';

const kinds = {
  column: 'ColumnClustered',
  'stacked column': 'ColumnStacked',
  bar: 'BarClustered',
  line: 'LineMarkers',
  scatter: 'XYScatter',
} as const satisfies Record<Chart['kind'], `${Excel.ChartType}`>;

function colour(series: Excel.ChartSeries, kind: Chart['kind'], k: number): void {
  const own = seriesColours[k % seriesColours.length] as string;
  if (kind === 'line') series.format.line.color = own;
  if (kind === 'line' || kind === 'scatter') {
    series.markerBackgroundColor = own;
    series.markerForegroundColor = own;
  } else series.format.fill.setSolidColor(own);
}

/**
 * Adds a chart whose every series is set by its ranges, so that nothing depends on what Excel guesses from cells whose
 * functions have not answered yet. `rangeOf` finds a block on any of the workbook's new sheets.
 */
export function writeChart(
  target: Excel.Worksheet,
  chart: Chart,
  sheet: string,
  rangeOf: (sheet: string, address: string) => Excel.Range,
): void {
  const range = (reference: string): Excel.Range => {
    const place = placeOf(reference, sheet);
    if (!place) throw new Error(`${reference} in the chart "${chart.title}" is not a block of cells`);
    return rangeOf(place.sheet, place.address);
  };
  const [first, ...others] = chart.series;
  if (!first) return;
  const { top, bottom } = blockOf(placeOf(first.values, sheet)?.address ?? '') as Block;
  const made = target.charts.add(kinds[chart.kind], range(first.values), bottom > top ? 'Columns' : 'Rows');
  for (const [k, { name, values }] of [first, ...others].entries()) {
    const series = k === 0 ? made.series.getItemAt(0) : made.series.add(name);
    series.name = name;
    series.setValues(range(values));
    series.setXAxisValues(range(chart.labels));
    colour(series, chart.kind, k);
  }
  made.title.text = chart.title;
  made.legend.visible = others.length > 0;
  made.legend.position = 'Top';
  // A bar chart lies on its side: what runs across is its value axis.
  const [across, up] = chart.kind === 'bar' ? [made.axes.valueAxis, made.axes.categoryAxis] : [made.axes.categoryAxis, made.axes.valueAxis];
  across.title.text = chart.across;
  up.title.text = chart.up;
  made.setPosition(chart.at);
  made.width = points(chart.width);
  made.height = points(chart.height);
}
