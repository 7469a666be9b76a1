package rainward.brief.words;

import java.util.ArrayList;
import java.util.List;
import rainward.brief.Alert;
import rainward.brief.Alert.PublicNews;
import rainward.brief.Alert.Step;
import rainward.brief.Alert.WindowNews;
import rainward.farm.UnitSystem;
import rainward.window.StormWindow;

/** What an alert says, part by part. */
public final class AlertWords {

    private final Alert alert;
    private final Reader reader;
    private final SkyWords sky;

    public AlertWords(Alert alert, UnitSystem units) {
        this.alert = alert;
        this.reader = new Reader(alert.origin().zone(), units);
        this.sky = new SkyWords(reader);
    }

    private static final String USEFUL_RAIN =
            "Useful rain: enough to start seed that is in the ground before it falls.";

    /** A part with its items. */
    public record Part(String heading, List<String> items) {}

    /** The same for all mails on one thing, so that readers thread them. */
    public String subject() {
        if (alert.news() instanceof WindowNews news) {
            return "Storm window: " + Reader.and(List.copyOf(news.window().properties()));
        }
        PublicNews news = (PublicNews) alert.news();
        return news.alert().alert().message().event() + ": "
                + Reader.and(news.alert().properties());
    }

    /** What has happened, in a sentence. */
    public String headline() {
        if (alert.news() instanceof WindowNews news) {
            return windowHeadline(news);
        }
        PublicNews news = (PublicNews) alert.news();
        return switch (news.step()) {
            case OPENED -> sky.alert(news.alert()) + ".";
            case CHANGED -> "Changed: " + sky.alert(news.alert()) + ".";
            case CLOSED ->
                "Over: " + news.alert().alert().message().event() + ", "
                        + Reader.and(news.alert().properties()) + ".";
        };
    }

    private String windowHeadline(WindowNews news) {
        StormWindow window = news.window();
        String where = Reader.and(List.copyOf(window.properties()));
        String rain = "useful rain is " + Reader.percent(window.chance()) + " likely at " + where;
        return switch (news.step()) {
            case OPENED -> "A storm window opens: " + rain + ".";
            case CHANGED -> "The storm window has changed: " + rain + ".";
            case CLOSED -> "The storm window at " + where + " is closed.";
        };
    }

    public String why() {
        return alert.why();
    }

    public String written() {
        return alert.origin().farm() + ", written "
                + reader.clock().dayTime(alert.origin().at());
    }

    public List<Part> parts() {
        return alert.news() instanceof WindowNews news
                ? windowParts(news)
                : publicParts((PublicNews) alert.news());
    }

    private List<Part> windowParts(WindowNews news) {
        if (news.step() == Step.CLOSED) {
            return List.of(new Part(
                    "Now",
                    List.of("Go on in the order of the last brief; the next one tells it anew.")));
        }
        StormWindow window = news.window();
        List<Part> parts = new ArrayList<>();
        parts.add(new Part(
                "The rain",
                List.of(
                        "Comes " + sky.arrival(window) + ".",
                        "Brings " + sky.amount(window) + ".",
                        USEFUL_RAIN)));
        parts.add(new Part("Fits before it, in order", fits(window)));
        if (!window.leave().isEmpty()) {
            parts.add(new Part(
                    "Leave",
                    List.of(Reader.and(window.leave())
                            + ": would not be done by "
                            + reader.clock().dayTime(window.arrival().p10())
                            + ", when the rain may come.")));
        }
        parts.add(new Part("Cautions", cautions(window)));
        return parts;
    }

    private List<String> fits(StormWindow window) {
        return window.fits().isEmpty()
                ? List.of("Nothing that waits there can be seeded in time.")
                : window.fits().stream().map(sky::fit).toList();
    }

    private static List<String> cautions(StormWindow window) {
        List<String> cautions = new ArrayList<>();
        cautions.add("Lightning: " + CautionWords.LIGHTNING);
        if (window.hardRainChance() >= SkyWords.HARD_FROM) {
            cautions.add("Hard rain may move seed and seal bare ground: slopes and fine tilth "
                    + "last, or not at all.");
        }
        cautions.add("A hurry before rain is when machines turn over: no short cuts on slopes "
                + "and roads.");
        return cautions;
    }

    private static List<Part> publicParts(PublicNews news) {
        if (news.step() == Step.CLOSED) {
            return List.of();
        }
        var said = news.alert().alert().message();
        List<String> words = new ArrayList<>();
        for (String line : List.of(said.headline(), said.instruction())) {
            if (!line.isBlank()) {
                words.add(line);
            }
        }
        if (!said.area().isBlank()) {
            words.add("For the area: " + said.area());
        }
        return List.of(
                new Part("The service says", words),
                new Part("Cautions", List.of("Lightning: " + CautionWords.LIGHTNING)));
    }
}
