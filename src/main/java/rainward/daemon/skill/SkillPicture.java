package rainward.daemon.skill;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.knowm.xchart.ChartEncoder;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.Styler;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;
import rainward.weather.skill.LeadSkill;
import rainward.weather.skill.ReliabilityTable;

/**
 * Reliability diagram: how often it came against what was said, with the line on which both agree.
 * Series differ by mark, by line and by lightness, so that black and white print is enough.
 */
final class SkillPicture {

    private static final int WIDTH_PX = 900;
    private static final int HEIGHT_PX = 820;
    private static final Color RANGE = new Color(0x88, 0x88, 0x88);

    private static final List<Look> LOOKS = List.of(
            new Look(SeriesMarkers.CIRCLE, new Color(0x00, 0x00, 0x00), 1f),
            new Look(SeriesMarkers.SQUARE, new Color(0x1f, 0x5a, 0x8c), 9f, 5f),
            new Look(SeriesMarkers.TRIANGLE_UP, new Color(0xb3, 0x5a, 0x00), 3f, 4f),
            new Look(SeriesMarkers.DIAMOND, new Color(0x80, 0x80, 0x80), 12f, 4f, 2f, 4f),
            new Look(SeriesMarkers.CROSS, new Color(0x00, 0x6b, 0x4f), 2f, 3f));

    private SkillPicture() {}

    private record Look(Marker marker, Color color, float... dash) {

        void on(XYSeries series) {
            series.setMarker(marker);
            series.setMarkerColor(color);
            series.setLineColor(color);
            series.setLineStyle(
                    dash.length == 1
                            ? new BasicStroke(2.2f)
                            : new BasicStroke(
                                    2.2f,
                                    BasicStroke.CAP_BUTT,
                                    BasicStroke.JOIN_ROUND,
                                    1f,
                                    dash,
                                    0f));
        }
    }

    /** PNG of a sheet. */
    static byte[] png(SkillSheet sheet) {
        XYChart chart = empty();
        int look = 0;
        for (LeadSkill lead : sheet.farm()) {
            String name =
                    "rain, " + lead.lead().words() + " ahead (" + lead.score().cases() + ")";
            add(chart, name, lead.reliability(), LOOKS.get(look++));
        }
        SkillSheet.Stands stands = sheet.stands();
        if (stands.checks() > 0) {
            add(chart, "stand (" + stands.checks() + ")", stands.reliability(), LOOKS.get(4));
        }
        try {
            return ChartEncoder.getBytes(chart, "png");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static XYChart empty() {
        XYChart chart = new XYChartBuilder()
                .width(WIDTH_PX)
                .height(HEIGHT_PX)
                .title("What was said and what came; bars hold 90%")
                .xAxisTitle("chance as said")
                .yAxisTitle("share that came")
                .build();
        var styler = chart.getStyler();
        styler.setXAxisMin(0.0).setXAxisMax(1.0).setYAxisMin(0.0).setYAxisMax(1.0);
        styler.setDecimalPattern("0.0");
        styler.setChartBackgroundColor(Color.WHITE);
        styler.setPlotGridLinesColor(new Color(0xdd, 0xdd, 0xdd));
        styler.setLegendPosition(Styler.LegendPosition.OutsideS);
        styler.setLegendLayout(Styler.LegendLayout.Horizontal);
        styler.setMarkerSize(11);
        Font font = new Font(Font.SANS_SERIF, Font.PLAIN, 16);
        styler.setBaseFont(font);
        styler.setChartTitleFont(font);
        styler.setAxisTitleFont(font);
        styler.setAxisTickLabelsFont(font);
        styler.setLegendFont(font);
        XYSeries agree = chart.addSeries("said = came", new double[] {0, 1}, new double[] {0, 1});
        agree.setMarker(SeriesMarkers.NONE);
        agree.setLineColor(new Color(0x99, 0x99, 0x99));
        agree.setLineStyle(new BasicStroke(1.2f));
        return chart;
    }

    private static void add(XYChart chart, String name, ReliabilityTable table, Look look) {
        List<ReliabilityTable.Row> rows = table.rows();
        for (ReliabilityTable.Row row : rows) {
            range(chart, name + row.forecastProbability(), row);
        }
        look.on(chart.addSeries(
                name,
                rows.stream()
                        .mapToDouble(ReliabilityTable.Row::forecastProbability)
                        .toArray(),
                rows.stream().mapToDouble(ReliabilityTable.Row::seenFraction).toArray()));
    }

    /** The 90 % interval, which does not lie evenly about what came. */
    private static void range(XYChart chart, String name, ReliabilityTable.Row row) {
        double at = row.forecastProbability();
        XYSeries range = chart.addSeries(
                name, new double[] {at, at}, new double[] {row.lowFraction(), row.highFraction()});
        range.setShowInLegend(false);
        range.setMarker(SeriesMarkers.NONE);
        range.setLineColor(RANGE);
        range.setLineStyle(new BasicStroke(1.4f));
    }
}
