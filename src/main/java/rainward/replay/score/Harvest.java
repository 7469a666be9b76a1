package rainward.replay.score;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import rainward.cycle.ground.Hindsight;
import rainward.farm.Field;
import rainward.farm.Mix;
import rainward.farm.Roster;
import rainward.replay.crew.SeasonLog;
import rainward.replay.crew.World;
import rainward.replay.score.FieldResult.Cause;
import rainward.replay.score.FieldResult.Fate;
import rainward.replay.truth.TrueWeather;
import rainward.stand.StandOutlook;
import rainward.weather.past.ObservedWeather;

/**
 * What came of seed under the weather that came: by the stand model, and by a plain rule that
 * shares nothing with it.
 *
 * <p>The plain rule, common practice, no source: a stand takes half an inch of rain within a day in
 * the two weeks after seeding, a quarter of an inch more within ten days of that, and no day before
 * it comes up a week after the first rain on which more than two inches fall.
 */
final class Harvest {

    private static final double WETTING_MM = 12.7;
    private static final double KEEPING_MM = 6.35;
    private static final double WASHING_MM = 50.8;
    private static final int FIRST_RAIN_DAYS = 14;
    private static final int KEEPING_DAYS = 10;
    private static final int EMERGENCE_DAYS = 7;

    private final Roster roster;
    private final TrueWeather weather;
    private final Hindsight hindsight;

    Harvest(World world) {
        this.roster = world.scene().roster();
        this.weather = world.weather();
        this.hindsight = world.hindsight();
    }

    FieldResult of(SeasonLog.Sown sown) {
        Field field = sown.item().field();
        Mix mix = Optional.ofNullable(roster.mixes().get(sown.mix())).orElseThrow();
        return new FieldResult(
                field.name(),
                mix.name(),
                sown.at(),
                field.areaHa(),
                field.wish().priority(),
                sown.chance(),
                byModel(sown, mix),
                byRule(sown, mix));
    }

    private Fate byModel(SeasonLog.Sown sown, Mix mix) {
        Hindsight.Seeding seeding = new Hindsight.Seeding(
                sown.item(), roster.recipeOf(sown.item().field()).orElseThrow(), mix, sown.at());
        return hindsight
                .of(seeding, weatherOf(sown), zone())
                .map(Harvest::fate)
                .orElse(new Fate(false, 0, Cause.DRY));
    }

    private static Fate fate(StandOutlook outlook) {
        boolean stand = outlook.chance()[0] >= 0.5;
        StandOutlook.Losses lost = outlook.losses().get(0);
        return new Fate(stand, outlook.worth()[0], stand ? Cause.NOTHING : greatest(lost));
    }

    private static Cause greatest(StandOutlook.Losses lost) {
        double most = Math.max(
                Math.max(lost.falseStartFraction(), lost.washOutFraction()),
                Math.max(lost.heatFraction(), lost.stillDryFraction()));
        if (most == lost.falseStartFraction() && most > 0) {
            return Cause.FALSE_START;
        }
        if (most == lost.washOutFraction() && most > 0) {
            return Cause.WASHED_OUT;
        }
        return most == lost.heatFraction() && most > 0 ? Cause.HEAT : Cause.DRY;
    }

    private ObservedWeather weatherOf(SeasonLog.Sown sown) {
        return weather.at(sown.item().field().property());
    }

    private ZoneId zone() {
        return roster.crew().zone();
    }

    private Fate byRule(SeasonLog.Sown sown, Mix mix) {
        Optional<Instant> wetted = first(sown, sown.at(), FIRST_RAIN_DAYS, WETTING_MM);
        if (wetted.isEmpty()) {
            return new Fate(false, 0, Cause.DRY);
        }
        Instant up = wetted.get().plus(Duration.ofDays(EMERGENCE_DAYS));
        int days = (int) Duration.between(sown.at(), up).toDays();
        if (first(sown, sown.at(), days, WASHING_MM).isPresent()) {
            return new Fate(false, 0, Cause.WASHED_OUT);
        }
        Instant nextDay = wetted.get().plus(Duration.ofDays(1));
        if (first(sown, nextDay, KEEPING_DAYS, KEEPING_MM).isEmpty()) {
            return new Fate(false, 0, Cause.FALSE_START);
        }
        double worth = mix.season().worthOn(LocalDate.ofInstant(up, zone()));
        return new Fate(worth > 0, worth, Cause.NOTHING);
    }

    /** The first hour from which so much falls within a day. */
    private Optional<Instant> first(
            SeasonLog.Sown sown, Instant from, int withinDays, double withinDayMm) {
        String property = sown.item().field().property();
        for (int h = 0; h < 24 * withinDays; h++) {
            Instant at = from.plus(Duration.ofHours(h));
            if (weather.rainMm(property, at, 24) >= withinDayMm
                    && weather.rainMm(property, at, 1) > 0) {
                return Optional.of(at);
            }
        }
        return Optional.empty();
    }
}
