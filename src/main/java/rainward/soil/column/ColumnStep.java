package rainward.soil.column;

import java.time.Instant;
import java.util.Arrays;
import rainward.farm.Require;
import rainward.soil.FieldSoil;
import rainward.soil.SoilState;
import rainward.soil.heat.HeatColumn;
import rainward.soil.heat.SurfaceHeat;
import rainward.soil.property.Layers;
import rainward.soil.water.Infiltration;
import rainward.soil.water.RainHour;
import rainward.soil.water.Traverse;
import rainward.soil.water.WaterColumn;
import rainward.weather.past.ObservedWeather;
import rainward.weather.sky.HourlyAir;
import rainward.weather.trace.Traces;

/** Water and heat of a column stepped together, from a state, on a number of traces. */
public final class ColumnStep {

    /** An hour with this much rain counts as overcast; common practice, no source [mm]. */
    private static final double OVERCAST_MM = 1;

    /** Greatest 30-minute share of observed hours: Yin and others 2007 [-]. */
    private static final double PEAK_SHARE = 1.668;

    public final Layers layers;
    public final WaterColumn water;
    public final HeatColumn heat;
    public final int traces;
    private final double[] shade;
    private final double[] oneRain = new double[1];
    private final double[] onePeak = new double[1];

    public ColumnStep(FieldSoil soil, SoilState from, int traces) {
        this.layers = soil.layers();
        this.water = new WaterColumn(soil, layers, traces);
        this.heat = new HeatColumn(soil, layers, traces);
        this.traces = traces;
        this.shade = new double[traces];
        Arrays.fill(shade, 1);
        Require.that(
                from.waterFraction().length == layers.count()
                        && from.tempC().length == heat.count(),
                "state has other layers than the column");
        for (int l = 0; l < layers.count(); l++) {
            water.fill(l, from.waterFraction()[l]);
        }
        for (int l = 0; l < heat.count(); l++) {
            heat.fill(l, from.tempC()[l]);
        }
        water.infiltration().fill(from.surface());
    }

    /** Goes on from where another column is now, with some of its traces. */
    ColumnStep(FieldSoil soil, ColumnStep from, int[] picked) {
        this.layers = from.layers;
        this.water = new WaterColumn(soil, layers, picked.length);
        this.heat = new HeatColumn(soil, layers, picked.length);
        this.traces = picked.length;
        this.shade = new double[traces];
        Arrays.fill(shade, 1);
        water.take(from.water, picked);
        heat.take(from.heat, picked);
    }

    /** An hour of the past, on one trace; its radiation already knows its clouds. */
    public void observed(ObservedWeather past, int hour) {
        oneRain[0] = past.rainMm()[hour];
        onePeak[0] = PEAK_SHARE * oneRain[0];
        double reference = past.sun().referenceEvapotranspirationMm()[hour];
        water.hour(new RainHour(oneRain, onePeak), reference, shade);
        heat.hour(airOf(past.air(), past.sun().radiationMjPerM2()[hour], hour), shade, water);
    }

    /** An hour to come, on all traces; where rain falls, the sky is taken as overcast. */
    public void forecast(Traces to, int hour) {
        double[] rain = to.rainMm()[hour];
        double through = SurfaceHeat.throughCloud(to.air().skyCoverFraction()[hour]);
        double dim = 1 - SurfaceHeat.throughCloud(1) / through;
        double perMm = dim / OVERCAST_MM;
        for (int i = 0; i < rain.length; i++) {
            shade[i] = 1 - Traverse.lesser(dim, perMm * rain[i]);
        }
        double reference = to.sun().referenceEvapotranspirationMm()[hour];
        water.hour(new RainHour(rain, to.peak30MmPerH()[hour]), reference, shade);
        heat.hour(airOf(to.air(), to.sun().radiationMjPerM2()[hour], hour), shade, water);
    }

    private static SurfaceHeat airOf(HourlyAir air, double sunMjPerM2, int hour) {
        return SurfaceHeat.of(
                air.airTempC()[hour],
                air.dewPointC()[hour],
                air.windMps()[hour],
                air.skyCoverFraction()[hour],
                sunMjPerM2);
    }

    /** The state of the first trace. */
    public SoilState stateAt(Instant at) {
        double[] fraction = new double[layers.count()];
        for (int l = 0; l < fraction.length; l++) {
            fraction[l] = water.waterMm[l][0] / layers.thicknessMm[l];
        }
        double[] temp = new double[heat.count()];
        for (int l = 0; l < temp.length; l++) {
            temp[l] = heat.tempC[l][0];
        }
        Infiltration above = water.infiltration();
        return new SoilState(
                at,
                fraction,
                temp,
                new SoilState.Wetting(above.leafMm[0], above.pondMm[0], above.goneInMm[0]));
    }
}
