package rainward.daemon.replay;

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
import org.knowm.xchart.style.markers.SeriesMarkers;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.replay.crew.Policy;
import rainward.replay.score.Reliability;
import rainward.replay.score.SeasonResult;

/** Pictures of a run of seasons, told apart by mark as well as by colour. */
final class ReplayPictures {

    private static final int SIDE_PX = 640;
    private static final Color INK = new Color(0x1f, 0x5a, 0x8c);
    private static final Color LINE = new Color(0x99, 0x99, 0x99);

    private ReplayPictures() {}

    /** Chance as told against the share that came up. */
    static byte[] reliability(List<Reliability.Step> steps) {
        XYChart chart = empty("chance of a stand as told", "share that came up");
        chart.getStyler().setXAxisMin(0.0).setXAxisMax(1.0);
        chart.getStyler().setYAxisMin(0.0).setYAxisMax(1.0);
        even(chart, 0, 1);
        marks(
                chart,
                steps.stream().mapToDouble(Reliability.Step::toldFraction).toArray(),
                steps.stream().mapToDouble(Reliability.Step::cameFraction).toArray());
        return png(chart);
    }

    /** Worth of each season by one policy against that by another. */
    static byte[] seasons(List<SeasonResult> seasons, Policy across, Policy up) {
        double[] x = worth(seasons, across);
        double[] y = worth(seasons, up);
        XYChart chart = empty(across.words() + ", worth a season", up.words() + ", worth a season");
        double most = Math.max(max(x), max(y)) * 1.05;
        even(chart, 0, most);
        marks(chart, x, y);
        return png(chart);
    }

    private static double[] worth(List<SeasonResult> seasons, Policy policy) {
        return seasons.stream()
                .mapToDouble(s -> UnitSystem.US_CUSTOMARY.shown(
                        Quantity.AREA, s.by(policy).orElseThrow().model().worthHa()))
                .toArray();
    }

    private static double max(double[] values) {
        double max = 1;
        for (double value : values) {
            max = Math.max(max, value);
        }
        return max;
    }

    private static void even(XYChart chart, double from, double to) {
        XYSeries even = chart.addSeries("even", new double[] {from, to}, new double[] {from, to});
        even.setMarker(SeriesMarkers.NONE);
        even.setLineColor(LINE);
        even.setLineStyle(new BasicStroke(1.2f));
    }

    private static void marks(XYChart chart, double[] x, double[] y) {
        if (x.length == 0) {
            return;
        }
        XYSeries marks = chart.addSeries("seasons", x, y);
        marks.setXYSeriesRenderStyle(XYSeries.XYSeriesRenderStyle.Scatter);
        marks.setMarker(SeriesMarkers.CIRCLE);
        marks.setMarkerColor(INK);
    }

    private static XYChart empty(String across, String up) {
        XYChart chart = new XYChartBuilder()
                .width(SIDE_PX)
                .height(SIDE_PX)
                .xAxisTitle(across)
                .yAxisTitle(up)
                .build();
        Styler styler = chart.getStyler();
        styler.setChartBackgroundColor(Color.WHITE);
        styler.setLegendVisible(false);
        Font font = new Font(Font.SANS_SERIF, Font.PLAIN, 15);
        chart.getStyler().setAxisTitleFont(font);
        chart.getStyler().setAxisTickLabelsFont(font);
        chart.getStyler().setMarkerSize(9);
        chart.getStyler().setPlotGridLinesColor(new Color(0xdd, 0xdd, 0xdd));
        return chart;
    }

    private static byte[] png(XYChart chart) {
        try {
            return ChartEncoder.getBytes(chart, "png");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
