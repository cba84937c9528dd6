import { type ChartDefinition, type FigureData, helpers } from '@odoo/o-spreadsheet';
import { seriesColours } from '../../workbook/look.ts';
import type { Chart } from '../../workbook/model.ts';

function definition(chart: Chart): ChartDefinition {
  const common = {
    title: { text: chart.title, bold: true, fontSize: 14 },
    legendPosition: chart.series.length > 1 ? ('top' as const) : ('none' as const),
    axesDesign: { x: { title: { text: chart.across } }, y: { title: { text: chart.up } } },
    dataSource: {
      type: 'range' as const,
      dataSets: chart.series.map(({ values }, k) => ({ dataSetId: String(k), dataRange: values })),
      dataSetsHaveTitle: false,
      labelRange: chart.labels,
    },
    dataSetStyles: Object.fromEntries(
      chart.series.map(({ name }, k) => [String(k), { label: name, backgroundColor: seriesColours[k % seriesColours.length] as string }]),
    ),
  };
  switch (chart.kind) {
    case 'line':
      return { ...common, type: 'line', labelsAsText: false, stacked: false, cumulative: false };
    case 'scatter':
      return { ...common, type: 'scatter', labelsAsText: false };
    default:
      return { ...common, type: 'bar', stacked: chart.kind === 'stacked column', horizontal: chart.kind === 'bar' };
  }
}

export function figureOf(chart: Chart, id: string): FigureData<ChartDefinition & { chartId: string }> {
  const { left, top } = helpers.toZone(chart.at);
  const { width, height } = chart;
  return { id, col: left, row: top, offset: { x: 0, y: 0 }, width, height, tag: 'chart', data: { ...definition(chart), chartId: id } };
}
