package rainward.daemon.replay;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import rainward.brief.page.Element;
import rainward.daemon.office.Refusal;
import rainward.farm.Quantity;
import rainward.farm.UnitSystem;
import rainward.replay.Gains;
import rainward.replay.Replay;
import rainward.replay.crew.Policy;
import rainward.replay.score.SeasonResult;

/** A run of seasons as a page: tables, pictures, and the season that went worst day by day. */
final class ReplayReport {

    private static final int WORST = 8;

    private static final String CSS = "body{font:16px/1.45 sans-serif;margin:2em auto;"
            + "max-width:72em;padding:0 1em;color:#1b1b1b;background:#fff}"
            + "table{border-collapse:collapse;margin:.6em 0 1.4em}"
            + "td,th{border-bottom:1px solid #ccc;padding:.3em .8em .3em 0;text-align:left;"
            + "vertical-align:top}img{max-width:100%;width:30em;margin-right:1em}"
            + ".wide{overflow-x:auto}";

    private final ReplayAnswer answer;
    private final List<SeasonResult> seasons;
    private final List<Replay.Asked> asked;

    ReplayReport(ReplayAnswer answer, List<Gains.Tried> tried, List<Replay.Asked> asked) {
        this.answer = answer;
        this.seasons = tried.stream().map(Gains.Tried::asItIs).toList();
        this.asked = asked;
    }

    /** Writes page and pictures into a folder. */
    void write(Path folder) {
        try {
            Files.createDirectories(folder);
            if (rainwardWasRun()) {
                Files.write(
                        folder.resolve("reliability.png"),
                        ReplayPictures.reliability(answer.reliability()));
                Files.write(
                        folder.resolve("seasons.png"),
                        ReplayPictures.seasons(seasons, Policy.AS_LISTED, Policy.RAINWARD));
            }
            Files.writeString(folder.resolve("index.html"), page(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw Refusal.badInput("The report cannot be written to " + folder + ": name a folder"
                    + " that can be written with --report.");
        }
    }

    private boolean rainwardWasRun() {
        return seasons.stream().allMatch(s -> s.by(Policy.RAINWARD).isPresent());
    }

    String page() {
        Element body = Element.of("body").add(text("h1", "Seasons run again"), text("p", intro()));
        body.add(
                text("h2", "What each way of choosing brought, by the stand model"),
                table(ReplayText.rows(answer.policies())),
                text("p", ReplayText.closed(answer.gapClosed())),
                text("h2", "The same by a plain rule that shares nothing with the model"),
                text(
                        "p",
                        "Half an inch within two weeks, a quarter more within ten days of it, no"
                                + " two-inch day."),
                table(ReplayText.rows(answer.byPlainRule().policies())),
                text("p", ReplayText.closed(answer.byPlainRule().gapClosed())));
        if (!answer.trials().isEmpty()) {
            body.add(
                    text("h2", "One thing otherwise, all else as it was"),
                    table(ReplayText.trials(answer.trials())));
        }
        if (rainwardWasRun()) {
            body.addAll(rainward());
        }
        Element head = Element.of("head")
                .add(
                        Element.of("meta").attribute("charset", "utf-8"),
                        Element.of("meta")
                                .attribute("name", "viewport")
                                .attribute("content", "width=device-width"),
                        text("title", "Seasons run again"),
                        text("style", CSS));
        return "<!DOCTYPE html>\n" + Element.of("html").attribute("lang", "en").add(head, body);
    }

    private String intro() {
        return answer.seasons() + " seasons"
                + (answer.invented() ? " of invented weather" : " of observed weather")
                + ". Every way of choosing had the same crew, fields, weather, forecasts,"
                + " breakdowns and paces. Figures are means a season; worth is acres x priority x"
                + " worth of the stand's date; ranges hold 95 of 100 repetitions.";
    }

    private List<Element> rainward() {
        List<Element> parts = new ArrayList<>();
        parts.add(text("h2", "Chance and what came"));
        parts.add(Element.of("p")
                .add(
                        picture("reliability.png", "Chance told against the share that came up"),
                        picture("seasons.png", "Worth by the order against worth as listed")));
        parts.add(table(reliability()));
        parts.add(text("h2", "Where the order lost to the listed one, and to what"));
        parts.add(table(losses()));
        List<SeasonResult> worst = seasons.stream()
                .sorted(Comparator.comparingDouble(this::overListed))
                .limit(WORST)
                .toList();
        parts.add(table(worst(worst)));
        worst.stream().findFirst().ifPresent(season -> {
            parts.add(text(
                    "h2",
                    "Day by day: " + season.station() + " from " + season.start()
                            + ", where it lost most"));
            asked.stream()
                    .filter(a -> a.key().equals(season.key()))
                    .findFirst()
                    .map(a -> new Story(season, a, List.of(Policy.RAINWARD, Policy.AS_LISTED)))
                    .ifPresent(story -> parts.add(table(story.rows())));
        });
        return parts;
    }

    private double overListed(SeasonResult season) {
        ToDoubleFunction<Policy> worth =
                policy -> season.by(policy).orElseThrow().model().worthHa();
        return UnitSystem.US_CUSTOMARY.shown(
                Quantity.AREA,
                worth.applyAsDouble(Policy.RAINWARD) - worth.applyAsDouble(Policy.AS_LISTED));
    }

    private List<List<String>> worst(List<SeasonResult> worst) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("station", "start", "worth over listed"));
        worst.forEach(s -> rows.add(List.of(
                s.station(),
                s.start().toString(),
                String.format(Locale.US, "%+.1f", overListed(s)))));
        return rows;
    }

    private List<List<String>> reliability() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("told", "came", "fields"));
        answer.reliability()
                .forEach(step -> rows.add(List.of(
                        Math.round(100 * step.toldFraction()) + " %",
                        Math.round(100 * step.cameFraction()) + " %",
                        String.valueOf(step.fields()))));
        return rows;
    }

    private List<List<String>> losses() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("what took the field", "lost by the order", "lost by the list"));
        answer.lossesToListed()
                .forEach(line -> rows.add(List.of(
                        ReplayText.cause(line),
                        String.valueOf(line.lost()),
                        String.valueOf(line.won()))));
        return rows;
    }

    private static Element picture(String file, String words) {
        return Element.of("img").attribute("src", file).attribute("alt", words);
    }

    private static Element text(String tag, String text) {
        return Element.of(tag).text(text);
    }

    private static Element table(List<List<String>> rows) {
        Element table = Element.of("table");
        for (int r = 0; r < rows.size(); r++) {
            String cell = r == 0 ? "th" : "td";
            table.add(Element.of("tr")
                    .addAll(rows.get(r).stream().map(c -> text(cell, c)).toList()));
        }
        return Element.of("div").attribute("class", "wide").add(table);
    }
}
