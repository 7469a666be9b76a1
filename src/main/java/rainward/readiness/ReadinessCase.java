package rainward.readiness;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rainward.farm.FieldCase;
import rainward.farm.Mix;
import rainward.farm.UnitSystem;
import rainward.soil.SoilRun;
import rainward.stand.StandOutlook;
import rainward.weather.source.ForecastSeries;
import rainward.weather.trace.Traces;

/**
 * All that is known of one field when it is asked how ready it is.
 *
 * @param item the field as it lies and stands
 * @param work what is still to be done before seed goes in
 * @param ahead weather, soil and stands; empty where there is no forecast
 * @param outOfStock mixes that the shed cannot fill
 * @param teller for whom, when and where
 */
public record ReadinessCase(
        FieldCase item, Work work, Optional<Ahead> ahead, Set<String> outOfStock, Teller teller) {

    public ReadinessCase {
        outOfStock = Set.copyOf(outOfStock);
    }

    /**
     * Stages before seeding.
     *
     * @param openStages names of those not done, in order
     * @param doneBy when they could be done at the earliest; now where none is open
     */
    public record Work(List<String> openStages, Instant doneBy) {

        public Work {
            openStages = List.copyOf(openStages);
        }
    }

    /**
     * What is ahead.
     *
     * @param stamp of the forecast
     * @param traces of the weather
     * @param soil on the traces, at the depth of the mix wanted first
     * @param options mixes with their outlook, the wanted one first; all over the same hours
     */
    public record Ahead(
            ForecastSeries.Stamp stamp, Traces traces, SoilRun soil, List<Option> options) {

        public Ahead {
            options = List.copyOf(options);
        }
    }

    /**
     * A mix that could be sown.
     *
     * @param mix what
     * @param outlook what comes of it by seeding hour
     */
    public record Option(Mix mix, StandOutlook outlook) {}

    /**
     * How the answer is told.
     *
     * @param asOf the moment it holds for
     * @param zone of the farm's days
     * @param units of the person
     */
    public record Teller(Instant asOf, ZoneId zone, UnitSystem units) {}
}
