package rainward.cycle;

import java.time.Duration;
import java.time.Instant;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.cycle.ground.Hindsight;
import rainward.cycle.ground.Stretch;
import rainward.farm.FieldCase;
import rainward.farm.FieldState;
import rainward.farm.Mix;
import rainward.farm.Season;
import rainward.stand.StandOutlook;
import rainward.stand.StandRules;
import rainward.stand.model.StandModel;
import rainward.weather.past.ObservedWeather;
import rainward.weather.trace.PointTraces;
import rainward.weather.trace.Traces;

/**
 * Seed that lies in the ground: what the weather since its sowing has made of it, and when a stand
 * shows, carried on over what the weather may do from now on.
 *
 * @param state that it is in now
 * @param emergence days from sowing to the stand, over the courses on which one comes up
 * @param losses under the weather that came
 */
public record SeedInGround(
        State state, StandOutlook.EmergenceRange emergence, StandOutlook.Losses losses) {

    /** Courses that a middle and two tails can be told from; the order takes more, for chances. */
    private static final int COURSES = 60;

    /** Chance of a stand below which what was lost is taken for the end of it; our choice. */
    private static final double LOST_CHANCE = 0.1;

    /** Share of the seed that must be gone before a stand is given up; our choice. */
    private static final double LOST_SHARE = 0.3;

    /**
     * Where so much of the seed still waits in dry soil, rain has not done its part; our choice.
     */
    private static final double DRY_SHARE = 0.5;

    /** What seed does. */
    public enum State {
        /** It waits in dry soil. */
        DRY,
        /** It has had its water and is coming. */
        GROWING,
        /** It started and died, or went with the water: no stand can come of it. */
        LOST
    }

    /** Every seeded field whose seeding the weather on record reaches back to, by name. */
    public static Map<String, SeedInGround> all(CycleInput input) {
        List<FieldCase> seeded = input.fields().stream()
                .filter(item -> item.status().state() == FieldState.SEEDED)
                .toList();
        Map<String, SeedInGround> all = new TreeMap<>();
        Map<String, PointTraces> drawn = seeded.isEmpty() ? Map.of() : Sky.drawn(input);
        seeded.forEach(item -> seeding(item, input)
                .flatMap(seeding -> of(
                        seeding,
                        weather(item, input),
                        Optional.ofNullable(drawn.get(item.field().property()))
                                .map(PointTraces::traces),
                        input.zone()))
                .ifPresent(seed -> all.put(item.field().name(), seed)));
        return all;
    }

    private static Optional<Hindsight.Seeding> seeding(FieldCase item, CycleInput input) {
        Optional<Mix> mix = Optional.ofNullable(input.roster().mixes().get(item.mix()));
        return input.roster()
                .recipeOf(item.field())
                .filter(recipe -> input.weather().containsKey(item.field().property()))
                .flatMap(recipe -> mix.flatMap(sown -> input.roster()
                        .sownAt(item)
                        .map(at -> new Hindsight.Seeding(item, recipe, inAnySeason(sown), at))));
    }

    /** Seed that lies in the ground comes up whatever the calendar says of its worth. */
    private static Mix inAnySeason(Mix mix) {
        MonthDay first = MonthDay.of(1, 1);
        MonthDay last = MonthDay.of(12, 31);
        return new Mix(
                mix.name(),
                mix.components(),
                mix.sowingDepthCm(),
                mix.standTargetFraction(),
                new Season(first, last, last, last, 1, 1));
    }

    private static ObservedWeather weather(FieldCase item, CycleInput input) {
        return Optional.ofNullable(input.weather().get(item.field().property()))
                .orElseThrow()
                .past()
                .weather();
    }

    /**
     * One seeding.
     *
     * @param seeding to look at
     * @param past weather that came, from well before it up to now
     * @param ahead courses of the weather from now on, if there is a forecast
     * @param zone of the farm's days
     * @return empty where the weather on record does not reach back to it
     */
    public static Optional<SeedInGround> of(
            Hindsight.Seeding seeding, ObservedWeather past, Optional<Traces> ahead, ZoneId zone) {
        Optional<Traces> courses = ahead.map(all -> Stretch.first(all, COURSES));
        return outlook(seeding, past, Optional.empty(), zone)
                .flatMap(came -> outlook(seeding, past, courses, zone)
                        .map(whole -> new SeedInGround(
                                state(came),
                                whole.emergence().get(0),
                                came.losses().get(0))));
    }

    private static Optional<StandOutlook> outlook(
            Hindsight.Seeding seeding, ObservedWeather past, Optional<Traces> ahead, ZoneId zone) {
        return Hindsight.plain().outlook(seeding, past, ahead, patient(seeding, past, ahead), zone);
    }

    /**
     * The model that plans judges every stand three weeks after seeding; to say when one shows, the
     * judging is moved as far past the end of the weather as it lies in a plan of today.
     */
    private static StandModel patient(
            Hindsight.Seeding seeding, ObservedWeather past, Optional<Traces> ahead) {
        StandRules usual = StandRules.DEFAULT;
        Instant end =
                ahead.map(all -> all.timeOf(all.hours())).orElse(past.air().end());
        double daysKnown = Duration.between(seeding.seededAt(), end).toHours() / 24.0;
        double daysAfter = usual.checkDays() - CycleInput.TRACE_HOURS / 24.0;
        return new StandModel(new StandRules(
                usual.grain(),
                usual.fieldFraction(),
                usual.seedling(),
                usual.damage(),
                Math.max(usual.checkDays(), daysKnown + daysAfter)));
    }

    private static State state(StandOutlook came) {
        StandOutlook.Losses losses = came.losses().get(0);
        if (losses.stillDryFraction() > DRY_SHARE) {
            return State.DRY;
        }
        double gone =
                losses.falseStartFraction() + losses.washOutFraction() + losses.heatFraction();
        return came.chance()[0] < LOST_CHANCE && gone > LOST_SHARE ? State.LOST : State.GROWING;
    }

    /** What most of the lost seed went by, in words. */
    public String cause() {
        if (losses.washOutFraction() > losses.falseStartFraction()
                && losses.washOutFraction() > losses.heatFraction()) {
            return "washed out";
        }
        return losses.heatFraction() > losses.falseStartFraction()
                ? "killed by heat"
                : "started, then dried out";
    }
}
