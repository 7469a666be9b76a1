package rainward.brief.making;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.brief.Brief.LoadLine;
import rainward.brief.Brief.SeasonGoal;
import rainward.brief.Brief.StandCheck;
import rainward.brief.Brief.Undelivered;
import rainward.brief.Brief.WeekReport;
import rainward.brief.LocalAlert;
import rainward.cycle.Outlook;
import rainward.cycle.RainPicture;
import rainward.farm.Roster;
import rainward.queue.problem.Plan;
import rainward.weather.sky.HourlyAir;

/**
 * All that a brief is made of.
 *
 * @param outlook what the last round of reckoning says
 * @param roster what its names mean
 * @param occasion whose brief, of which day
 * @param last the brief before, if there was one
 * @param skies weather beside the rain of the outlook
 * @param books what the records ask for
 */
public record BriefInput(
        Outlook outlook,
        Roster roster,
        Occasion occasion,
        Optional<LastBrief> last,
        Skies skies,
        Books books) {

    public ZoneId zone() {
        return roster.crew().zone();
    }

    /** The farm's calendar day that the brief is for. */
    public LocalDate day() {
        return occasion.dueAt().atZone(zone()).toLocalDate();
    }

    /**
     * Whose brief, of which day.
     *
     * @param farm what the crew calls the whole
     * @param dueAt when it was to go out; its local date is the day of the brief
     * @param writtenAt when it is written
     */
    public record Occasion(String farm, Instant dueAt, Instant writtenAt) {}

    /**
     * What the brief before said, to tell what changed.
     *
     * @param plan its order
     * @param rain its rain, by property
     */
    public record LastBrief(Plan plan, Map<String, RainPicture> rain) {

        public LastBrief {
            rain = Map.copyOf(rain);
        }
    }

    /**
     * Weather beside the rain.
     *
     * @param air temperature, dew point and wind by property
     * @param alerts of public weather services, in force or announced
     * @param credits what a source wants to be named as, by its short name
     * @param warnings what was missing in the forecasts, in words
     */
    public record Skies(
            Map<String, HourlyAir> air,
            List<LocalAlert> alerts,
            Map<String, String> credits,
            List<String> warnings) {

        /** Nothing known. */
        public static final Skies EMPTY = new Skies(Map.of(), List.of(), Map.of(), List.of());

        public Skies {
            air = Map.copyOf(air);
            alerts = List.copyOf(alerts);
            credits = Map.copyOf(credits);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * What the records ask for.
     *
     * @param load what goes on the trucks today
     * @param standChecks fields to look at, due or soon due
     * @param goal the date to finish by, if there is one
     * @param questions that need a person's answer, in words
     * @param undelivered messages that did not go out
     * @param week how the service did, where it is the day to say so
     */
    public record Books(
            List<LoadLine> load,
            List<StandCheck> standChecks,
            Optional<SeasonGoal> goal,
            List<String> questions,
            List<Undelivered> undelivered,
            Optional<WeekReport> week) {

        /** Nothing to ask. */
        public static final Books EMPTY = new Books(
                List.of(), List.of(), Optional.empty(), List.of(), List.of(), Optional.empty());

        public Books {
            load = List.copyOf(load);
            standChecks = List.copyOf(standChecks);
            questions = List.copyOf(questions);
            undelivered = List.copyOf(undelivered);
        }
    }
}
