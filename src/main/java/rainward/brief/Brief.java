package rainward.brief;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import rainward.window.StormWindow;

/**
 * What the crew reads at dawn, as values in SI units; every string is one harmless line.
 *
 * @param heading whose, when, and what kind of day
 * @param orders who does what, in which order
 * @param changes against the brief before
 * @param sky rain by property, windows, public alerts
 * @param ground the soil, in words
 * @param ahead load, stand checks, season
 * @param cautions of the day
 * @param footing where the numbers come from and what is wrong with them
 */
public record Brief(
        Heading heading,
        Orders orders,
        List<Change> changes,
        Sky sky,
        List<SoilLine> ground,
        Ahead ahead,
        List<Caution> cautions,
        Footing footing) {

    public Brief {
        changes = List.copyOf(changes);
        ground = List.copyOf(ground);
        cautions = List.copyOf(cautions);
    }

    /** Kinds of day; the headline depends on it. */
    public enum Kind {
        /** There is work today. */
        WORK,
        /** There is work in the days ahead, none today. */
        WORK_LATER,
        /** All waiting fields are too wet; the order, if there is one, starts when they dry. */
        TOO_WET,
        /** Fields wait, none fits into the days ahead. */
        NOTHING_FITS,
        /** No usable forecast, so no order. */
        NO_FORECAST,
        /** Fields wait, but nothing may be sown any more. */
        SEASON_OVER,
        /** No field waits. */
        NOTHING_PENDING
    }

    /**
     * Whose brief, when, and what kind of day.
     *
     * @param farm what the crew calls the whole
     * @param day the farm's calendar day
     * @param zone of the farm
     * @param kind of day
     * @param written when it was due and when it was written
     */
    public record Heading(String farm, LocalDate day, ZoneId zone, Kind kind, Written written) {}

    /**
     * When it was due and when it was written.
     *
     * @param dueAt when it was to go out
     * @param at when it was written
     * @param late true where that was so much later that the reader should know
     * @param orderBeforeAt the order that changes are told against, where there was one
     */
    public record Written(
            Instant dueAt, Instant at, boolean late, Optional<Instant> orderBeforeAt) {}

    /**
     * The sky.
     *
     * @param rain one panel a property, in order of name
     * @param windows open now
     * @param alerts of public services
     */
    public record Sky(List<RainPanel> rain, List<StormWindow> windows, List<LocalAlert> alerts) {

        public Sky {
            rain = List.copyOf(rain);
            windows = List.copyOf(windows);
            alerts = List.copyOf(alerts);
        }
    }

    /**
     * What lies ahead.
     *
     * @param load what goes on the trucks
     * @param standChecks due by the day of the brief, or overdue
     * @param season how far it has come
     */
    public record Ahead(List<LoadLine> load, List<StandCheck> standChecks, SeasonView season) {

        public Ahead {
            load = List.copyOf(load);
            standChecks = List.copyOf(standChecks);
        }
    }

    /**
     * How far the season has come.
     *
     * @param doneHa seeded or up [ha]
     * @param leftHa waiting [ha]
     * @param lateHa part of what is left that the order gives to a fall-back mix [ha]
     * @param goal the date to finish by
     */
    public record SeasonView(
            double doneHa, double leftHa, double lateHa, Optional<SeasonGoal> goal) {}

    /**
     * A total of the load sheet, in the units of the shed.
     *
     * @param what for instance a mix
     * @param amount for instance {@code 6 bags (300 lb)}
     */
    public record LoadLine(String what, String amount) {}

    /**
     * A field to be looked at.
     *
     * @param field its name
     * @param sown what is in the ground
     * @param seededOn the farm's calendar day
     * @param lookOn first day on which a stand can be told from none
     * @param why that is the day
     */
    public record StandCheck(
            String field, String sown, LocalDate seededOn, LocalDate lookOn, Why why) {

        /** Why a field is to be looked at. */
        public enum Why {
            SHOULD_SHOW,
            TAKEN_FOR_LOST,
            TIME_IS_OVER
        }
    }

    /**
     * The season's aim.
     *
     * @param lastSowing last day that seed of the first-choice mixes goes in
     * @param finishChance that all waiting fields are seeded by then, 0 to 1, where reckoned
     */
    public record SeasonGoal(LocalDate lastSowing, OptionalDouble finishChance) {}

    /**
     * How the service did in the seven days before a brief.
     *
     * @param post what it sent
     * @param seededHa put in [ha]
     * @param stands what came up of what was looked at
     */
    public record WeekReport(Post post, double seededHa, Stands stands) {

        /**
         * What was sent.
         *
         * @param briefs days that had their brief
         * @param late of these
         * @param taken messages that a server took
         * @param lost messages that did not go out
         */
        public record Post(int briefs, int late, int taken, int lost) {}

        /**
         * What came up.
         *
         * @param up fields found with a stand
         * @param lookedAt fields looked at
         * @param meanChance of a stand given when they were seeded, 0 to 1
         */
        public record Stands(int up, int lookedAt, double meanChance) {}
    }

    /**
     * A message that did not go out.
     *
     * @param recipient whom it was for
     * @param subject what it was
     * @param why what the server or the network said last
     */
    public record Undelivered(String recipient, String subject, String why) {}

    /**
     * Where the numbers come from and what is wrong with them.
     *
     * @param forecasts age of the forecast by property, oldest first
     * @param credits of the sources
     * @param warnings what was missing
     * @param questions that need an answer
     * @param undelivered messages that did not go out
     * @param week how the service did in the week before, once a week
     */
    public record Footing(
            List<ForecastAge> forecasts,
            List<String> credits,
            List<String> warnings,
            List<String> questions,
            List<Undelivered> undelivered,
            Optional<WeekReport> week) {

        public Footing {
            forecasts = List.copyOf(forecasts);
            credits = List.copyOf(credits);
            warnings = List.copyOf(warnings);
            questions = List.copyOf(questions);
            undelivered = List.copyOf(undelivered);
        }

        /** How much the oldest forecast may be trusted. */
        public ForecastAge.Trust trust() {
            return forecasts.stream()
                    .map(ForecastAge::trust)
                    .max(Comparator.naturalOrder())
                    .orElse(ForecastAge.Trust.NONE);
        }
    }
}
