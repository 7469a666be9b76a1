package rainward.soil.column;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rainward.farm.Machine.MassClass;
import rainward.farm.Require;
import rainward.soil.FieldSoil;
import rainward.soil.SoilPast;
import rainward.soil.SoilRun;
import rainward.soil.SoilState;
import rainward.soil.Workability;
import rainward.soil.heat.HeatColumn;
import rainward.soil.property.Layers;
import rainward.weather.past.ObservedWeather;
import rainward.weather.trace.Foreseen;
import rainward.weather.trace.Traces;

/**
 * The soil of one field: brought up to now by what the weather did, then run on every trace of what
 * it may do.
 *
 * @param soil texture, slope and surface
 */
public record SoilColumn(FieldSoil soil) {

    /**
     * Where a column stands when nothing is known of it: field capacity, at one temperature.
     *
     * @param at full hour
     * @param tempC of the whole column [C]
     */
    public SoilState unknown(Instant at, double tempC) {
        Layers layers = soil.layers();
        double[] water = new double[layers.count()];
        Arrays.fill(water, layers.matrix.fieldCapacityFraction());
        double[] temp = new double[new HeatColumn(soil, layers, 1).count()];
        Arrays.fill(temp, tempC);
        return new SoilState(at, water, temp, SoilState.Wetting.NONE);
    }

    /** Where a column stands before a past of weather: field capacity, at the past's mean air. */
    public SoilState start(ObservedWeather past) {
        double mean = Arrays.stream(past.air().airTempC()).average().orElse(10);
        return unknown(past.air().start(), mean);
    }

    /**
     * The state at the end of a past of weather of which nothing was known before; sixty days make
     * the start forgotten in the top half metre.
     */
    public SoilState spinUp(ObservedWeather past) {
        return advance(start(past), past);
    }

    /**
     * The state moved on by observed weather.
     *
     * @param from state at the start of the weather
     * @param past weather since
     */
    public SoilState advance(SoilState from, ObservedWeather past) {
        return follow(from, past, 0).end();
    }

    /**
     * What the column does under observed weather, hour by hour at one depth.
     *
     * @param from state at the start of the weather
     * @param past weather since
     * @param depthCm looked at [cm]
     */
    public SoilPast follow(SoilState from, ObservedWeather past, double depthCm) {
        Require.that(
                from.at().equals(past.air().start()),
                "state is of " + from.at() + ", weather starts at " + past.air().start());
        ColumnStep step = new ColumnStep(soil, from, 1);
        DepthReader depth = new DepthReader(step, depthCm);
        int hours = past.air().hours();
        double[] water = new double[hours];
        double[] temp = new double[hours];
        for (int h = 0; h < hours; h++) {
            step.observed(past, h);
            water[h] = depth.waterFraction(0);
            temp[h] = depth.tempC(0);
        }
        return new SoilPast(step.stateAt(past.air().end()), water, temp);
    }

    /**
     * Runs every trace, reading several sowing depths from one water balance.
     *
     * @param now state at or before the start of the traces; hours between are not made up
     * @param traces what may come
     * @param depthsCm sowing depths [cm]
     * @param machine that is to work the ground
     * @return one run for each depth, in their order; what the surface does is shared
     */
    public List<SoilRun> run(
            SoilState now, Traces traces, List<Double> depthsCm, MassClass machine) {
        return record(begin(now, traces), traces, depthsCm, machine);
    }

    /**
     * Runs every trace, and carries some of them on through what comes after. Traces are put in
     * order by the water of the top ten centimetres at their end and cut into as many groups as
     * there are later courses; the middle trace of each group goes on for all of it.
     *
     * @param now state at or before the start of the traces
     * @param weather what may come
     * @param depthsCm sowing depths [cm]
     * @param machine that is to work the ground
     */
    public Runs run(SoilState now, Foreseen weather, List<Double> depthsCm, MassClass machine) {
        ColumnStep step = begin(now, weather.traces());
        List<SoilRun> ahead = record(step, weather.traces(), depthsCm, machine);
        if (weather.later().isEmpty()) {
            return new Runs(ahead, List.of(), new int[0]);
        }
        Traces later = weather.later().get();
        WetnessGroups groups = WetnessGroups.of(step, later.count());
        ColumnStep goesOn = new ColumnStep(soil, step, groups.middles());
        return new Runs(ahead, record(goesOn, later, depthsCm, machine), groups.groupOf());
    }

    /**
     * Runs with what comes after them.
     *
     * @param ahead one for each depth
     * @param later one for each depth; empty where nothing is supposed
     * @param courseOf the course of later weather that each trace goes on with
     */
    public record Runs(List<SoilRun> ahead, List<SoilRun> later, int[] courseOf) {

        public Runs {
            ahead = List.copyOf(ahead);
            later = List.copyOf(later);
        }
    }

    private ColumnStep begin(SoilState now, Traces traces) {
        Require.that(
                !Duration.between(now.at(), traces.start()).isNegative(),
                "state is of " + now.at() + ", after the traces start at " + traces.start());
        return new ColumnStep(soil, now, traces.count());
    }

    private List<SoilRun> record(
            ColumnStep step, Traces traces, List<Double> depthsCm, MassClass machine) {
        RunRecorder recorder =
                new RunRecorder(step, traces.hours(), Workability.of(soil.texture(), machine));
        List<SeedZoneRecorder> zones = new ArrayList<>();
        for (double depth : depthsCm) {
            zones.add(new SeedZoneRecorder(step, depth, traces.hours()));
        }
        for (int h = 0; h < traces.hours(); h++) {
            step.forecast(traces, h);
            recorder.record(h);
            for (SeedZoneRecorder zone : zones) {
                zone.record(h);
            }
        }
        SoilRun.SoilSurface surface = recorder.surface();
        return zones.stream()
                .map(z -> new SoilRun(traces.start(), z.zone(recorder), surface))
                .toList();
    }
}
