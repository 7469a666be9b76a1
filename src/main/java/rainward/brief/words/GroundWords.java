package rainward.brief.words;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import rainward.brief.Brief;
import rainward.brief.Brief.StandCheck;
import rainward.brief.ForecastAge;
import rainward.brief.SoilLine;
import rainward.cycle.Outlook.Seedbed.Wetness;

/** Soil, season, checks, and where the numbers come from. */
public final class GroundWords {

    private final Reader reader;

    public GroundWords(Reader reader) {
        this.reader = reader;
    }

    public String soil(SoilLine line) {
        return wetness(line.wetness()) + " at seed depth, " + reader.units().temp(line.tempC())
                + ", " + workable(line.workable()) + ": " + Reader.and(line.fields());
    }

    private static String wetness(Wetness wetness) {
        return switch (wetness) {
            case DUST_DRY -> "dust dry";
            case DRY -> "dry";
            case MOIST -> "moist";
            case WET -> "wet";
            case SOAKED -> "soaked";
        };
    }

    private String workable(SoilLine.Workable workable) {
        if (workable.now()) {
            return "fit to work";
        }
        return workable.from()
                .map(from -> "fit to work from " + reader.clock().dayTime(from))
                .orElse("not fit to work within the forecast");
    }

    public String check(StandCheck check) {
        return check.field() + ": " + toLook(check);
    }

    /** The same for a page that has the field beside it. */
    public String toLook(StandCheck check) {
        String told = switch (check.why()) {
            case SHOULD_SHOW -> "a stand can be told since " + reader.clock().day(check.lookOn());
            case TAKEN_FOR_LOST -> "by the weather since then the seed is lost";
            case TIME_IS_OVER ->
                "what has not come up by " + reader.clock().day(check.lookOn()) + " comes too late";
        };
        return check.sown() + ", seeded "
                + reader.clock().day(check.seededOn()) + "; " + told
                + ". Count and report what came up.";
    }

    public List<String> season(Brief.SeasonView season) {
        List<String> lines = new ArrayList<>();
        lines.add(reader.units().area(season.doneHa()) + " seeded, "
                + reader.units().area(season.leftHa()) + " left");
        season.goal().ifPresent(goal -> {
            String last =
                    "Last day for the first-choice mixes: " + reader.clock().day(goal.lastSowing());
            lines.add(
                    goal.finishChance().isPresent()
                            ? last + ", chance to finish by then "
                                    + Reader.percent(goal.finishChance().getAsDouble())
                            : last);
        });
        if (season.lateHa() > 0) {
            lines.add(reader.units().area(season.lateHa()) + " go to a fall-back mix");
        }
        return lines;
    }

    /** Source and age of the forecasts, those of one issue in one line. */
    public List<String> forecasts(Brief.Footing footing) {
        List<String> lines = new ArrayList<>();
        footing.forecasts().stream()
                .collect(Collectors.groupingBy(
                        age -> new Issue(
                                age.source(),
                                reader.clock().dayTime(age.issuedAt()) + ", "
                                        + Reader.hours(age.age()) + " before this brief"),
                        LinkedHashMap::new,
                        Collectors.mapping(ForecastAge::property, Collectors.toList())))
                .forEach((issue, properties) -> lines.add("Forecast " + issue.source() + ", issued "
                        + issue.when() + ": " + Reader.and(properties)));
        return lines;
    }

    /** For instance {@code Last week: 7 briefs, none late; ...}. */
    public String week(Brief.WeekReport week) {
        Brief.WeekReport.Post post = week.post();
        String stands = week.stands().lookedAt() == 0
                ? "no stand was looked at"
                : String.format(
                        Locale.ROOT,
                        "%d of %d fields looked at have a stand, %.1f were expected",
                        week.stands().up(),
                        week.stands().lookedAt(),
                        week.stands().lookedAt() * week.stands().meanChance());
        return "The week before: " + Reader.count(post.briefs(), "brief", "briefs") + ", "
                + none(post.late()) + " late; " + Reader.count(post.taken(), "message", "messages")
                + " delivered, " + none(post.lost()) + " lost; "
                + reader.units().area(week.seededHa()) + " seeded; " + stands + ".";
    }

    private static String none(int number) {
        return number == 0 ? "none" : String.valueOf(number);
    }

    private record Issue(String source, String when) {}
}
