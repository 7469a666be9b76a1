package rainward.brief.words;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rainward.brief.Brief;
import rainward.brief.Caution;
import rainward.brief.ForecastAge;
import rainward.brief.Orders.FieldLine;
import rainward.brief.Orders.StageLine;
import rainward.brief.SoilLine;
import rainward.brief.making.HeatIndex;
import rainward.farm.Operation;
import rainward.farm.Window;

/** Subject, headline and what has to be known before all else. */
public final class OpeningWords {

    private final Brief brief;
    private final Reader reader;
    private final Window day;

    public OpeningWords(Brief brief, Reader reader) {
        this.brief = brief;
        this.reader = reader;
        this.day = reader.clock().wholeDay(brief.heading().day());
    }

    public String subject() {
        String day = reader.clock().day(brief.heading().day());
        String late = brief.heading().written().late() ? " (late)" : "";
        return day + late + ": " + shortNews();
    }

    private String shortNews() {
        return switch (brief.heading().kind()) {
            case WORK -> firstToday().place().field() + " first, " + fieldsToday() + " today";
            case WORK_LATER -> "no field work today";
            case TOO_WET -> "too wet to work";
            case NOTHING_FITS -> "no field fits";
            case NO_FORECAST -> "no forecast, no order";
            case SEASON_OVER -> "the season is over";
            case NOTHING_PENDING -> "nothing to seed";
        };
    }

    /** One or two sentences. */
    public String headline() {
        return switch (brief.heading().kind()) {
            case WORK -> workToday();
            case WORK_LATER -> "No field work today. " + next();
            case TOO_WET -> "Too wet to work anywhere today. " + firstDry();
            case NOTHING_FITS ->
                "Fields wait, but none fits into the days ahead; why is said below.";
            case NO_FORECAST ->
                "There is no forecast that can be trusted, so there is no order. "
                        + "Look at the sky; soil and season below are as last known.";
            case SEASON_OVER ->
                "The season is over: it is too late to sow any field that still waits.";
            case NOTHING_PENDING -> "No field waits for seed, so there is no order today.";
        };
    }

    private String workToday() {
        FieldLine first = firstToday();
        Instant start = brief.orders().today().stream()
                .flatMap(line -> line.stages().stream())
                .map(stage -> stage.work().from())
                .filter(day::contains)
                .min(Comparator.naturalOrder())
                .orElse(day.from());
        String seed = seededTodayHa() > 0
                ? ", seed goes into " + reader.units().area(seededTodayHa())
                : ", no seed goes in yet";
        return first.place().field() + " at " + first.place().property()
                + " comes first. Work starts at " + reader.clock().time(start) + ": "
                + fieldsToday() + " today" + seed + ".";
    }

    private FieldLine firstToday() {
        return brief.orders().today().get(0);
    }

    private String fieldsToday() {
        return Reader.count(brief.orders().today().size(), "field", "fields");
    }

    private double seededTodayHa() {
        return brief.orders().today().stream()
                .mapToDouble(line -> line.stages().stream()
                        .filter(s -> s.operation() == Operation.SEED && s.work().overlaps(day))
                        .mapToDouble(s -> s.shareFraction() * line.place().areaHa())
                        .sum())
                .sum();
    }

    private String next() {
        return brief.orders().later().stream()
                .flatMap(line -> line.stages().stream().map(stage -> next(line, stage)))
                .findFirst()
                .orElse("");
    }

    private String next(FieldLine line, StageLine stage) {
        return "Next is " + line.place().field() + " at " + line.place().property() + ", "
                + reader.clock().dayTime(stage.work().from()) + ".";
    }

    private String firstDry() {
        Optional<SoilLine> first = brief.ground().stream()
                .filter(line -> line.workable().from().isPresent())
                .min(Comparator.comparing(line -> line.workable().from().orElseThrow()));
        return first.map(line -> Reader.and(line.fields()) + " at " + line.property()
                        + " dries first, fit to work from "
                        + reader.clock().dayTime(line.workable().from().orElseThrow()) + ".")
                .orElse("None is in sight of drying within the forecast.");
    }

    /** Where and when rain is likeliest; empty where no forecast is. */
    public Optional<String> rain() {
        return brief.sky().rain().stream()
                .filter(panel -> panel.likeliest().isPresent())
                .max(Comparator.comparingDouble(
                        panel -> panel.likeliest().orElseThrow().chance()))
                .map(panel -> "Rain: " + new SkyWords(reader).inShort(panel) + ".");
    }

    /** What has to be known before all else, worst first. */
    public List<String> notices() {
        List<String> notices = new ArrayList<>();
        var written = brief.heading().written();
        if (written.late()) {
            notices.add("Late: due at " + reader.clock().time(written.dueAt()) + ", written at "
                    + reader.clock().dayTime(written.at()) + ".");
        }
        age().ifPresent(notices::add);
        heat().ifPresent(notices::add);
        int lost = brief.footing().undelivered().size();
        if (lost > 0) {
            notices.add(Reader.count(lost, "message", "messages")
                    + " did not go out; the end of this brief says which and why.");
        }
        return notices;
    }

    /** Heat that changes the day is said at the top; what to do about it, with the cautions. */
    private Optional<String> heat() {
        return brief.cautions().stream()
                .filter(Caution.Heat.class::isInstance)
                .map(Caution.Heat.class::cast)
                .filter(heat -> heat.care().compareTo(HeatIndex.Care.HIGH) >= 0)
                .map(heat -> "Heat: it will feel like "
                        + reader.units().temp(heat.heatIndexC()) + " at " + heat.property()
                        + "; see the cautions.")
                .findFirst();
    }

    private Optional<String> age() {
        return brief.footing().forecasts().stream()
                .findFirst()
                .filter(oldest -> oldest.trust() != ForecastAge.Trust.FRESH)
                .map(oldest -> "The forecast" + whose(oldest) + " is "
                        + Reader.hours(oldest.age()) + " old, issued "
                        + reader.clock().dayTime(oldest.issuedAt()) + "."
                        + (oldest.trust() == ForecastAge.Trust.STALE
                                ? " Chances rest on it and are not fresh: look at the sky."
                                : ""));
    }

    private String whose(ForecastAge oldest) {
        boolean all = brief.footing().forecasts().stream()
                .allMatch(other -> other.issuedAt().equals(oldest.issuedAt()));
        return all ? "" : " for " + oldest.property();
    }
}
