package rainward.brief.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rainward.brief.Brief;

/** The brief part by part, for a page and for plain text alike. */
public final class BriefWords {

    /** What a chance means, once for the whole brief. */
    public static final String CHANCE_OF_A_STAND =
            "Chance of a stand: that enough plants come up to keep, when seeded as planned.";

    private final Brief brief;
    private final Reader reader;
    private final OrderWords order;
    private final SkyWords sky;
    private final GroundWords ground;

    public BriefWords(Brief brief, Reader reader) {
        this.brief = brief;
        this.reader = reader;
        this.order = new OrderWords(brief, reader);
        this.sky = new SkyWords(reader);
        this.ground = new GroundWords(reader);
    }

    /**
     * A part of the brief.
     *
     * @param heading of it
     * @param items line by line
     */
    public record Section(String heading, List<String> items) {}

    public OpeningWords opening() {
        return new OpeningWords(brief, reader);
    }

    public OrderWords order() {
        return order;
    }

    public SkyWords sky() {
        return sky;
    }

    /** What has to be known before all else, worst first. */
    public List<String> notices() {
        return Stream.of(opening().notices(), sky.urgent(brief.sky()))
                .flatMap(List::stream)
                .toList();
    }

    /** What the day asks of people, behind the order and before the rain. */
    public List<Section> beforeTheRain() {
        return told(
                new Section("Needs your answer", brief.footing().questions()),
                new Section("What changed", changes()),
                new Section(
                        "Cautions",
                        brief.cautions().stream()
                                .map(new CautionWords(reader)::of)
                                .toList()));
    }

    /** What the day rests on, behind the rain. */
    public List<Section> afterTheRain() {
        return told(
                new Section("After today", later()),
                new Section("Not in the order", leftOut()),
                new Section(
                        "Soil",
                        brief.ground().stream()
                                .map(line -> line.property() + ": " + ground.soil(line))
                                .toList()),
                new Section(
                        "On the trucks",
                        brief.ahead().load().stream()
                                .map(load -> load.what() + ": " + load.amount())
                                .toList()),
                new Section(
                        "Go and look",
                        brief.ahead().standChecks().stream().map(ground::check).toList()),
                new Section("Season", ground.season(brief.ahead().season())),
                new Section("Did not go out", undelivered()),
                new Section("Where this comes from", sources()));
    }

    private static List<Section> told(Section... sections) {
        return Stream.of(sections).filter(s -> !s.items().isEmpty()).toList();
    }

    /** A brief that follows another says so where nothing changed; the first has nothing to say. */
    private List<String> changes() {
        Optional<String> since =
                brief.heading().written().orderBeforeAt().map(reader.clock()::dayTime);
        if (since.isPresent() && brief.changes().isEmpty()) {
            return List.of("Nothing: no field has moved by two hours or more since the brief of "
                    + since.get() + ".");
        }
        return order.changes();
    }

    private List<String> later() {
        return brief.orders().later().stream()
                .map(line -> line.rank() + ". " + line.place().field() + ", " + order.later(line))
                .toList();
    }

    private List<String> leftOut() {
        return order.leftOut().stream()
                .map(left -> left.fields() + ": " + left.why())
                .toList();
    }

    private List<String> undelivered() {
        return brief.footing().undelivered().stream()
                .map(u -> u.subject() + ", to " + u.recipient() + ": " + u.why())
                .toList();
    }

    private List<String> sources() {
        List<String> sources = new ArrayList<>(ground.forecasts(brief.footing()));
        sources.addAll(brief.footing().warnings());
        sources.addAll(brief.footing().credits());
        brief.footing().week().map(ground::week).ifPresent(sources::add);
        return sources;
    }
}
