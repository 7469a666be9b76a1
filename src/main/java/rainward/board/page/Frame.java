package rainward.board.page;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rainward.board.door.Role;
import rainward.board.door.Visitor;
import rainward.board.house.Standing;
import rainward.brief.words.CautionWords;
import rainward.brief.words.Reader;
import rainward.farm.UnitSystem;

/**
 * What every page has around it.
 *
 * @param title of the page
 * @param here path of the page, so that the way there is marked
 * @param now by the clock of the service
 * @param standing how things stand
 * @param visitor who looks
 * @param token that their forms carry
 * @param saidKey key of the word that led here, if one did
 */
public record Frame(
        String title,
        String here,
        Instant now,
        Standing standing,
        Visitor visitor,
        String token,
        Optional<String> saidKey) {

    /** A way to another page. */
    public record Way(String path, String name) {}

    private static final List<Way> WAYS = List.of(
            new Way("/", "Today"),
            new Way("/ground", "Ground"),
            new Way("/loads", "Loads"),
            new Way("/weather", "Weather"),
            new Way("/season", "Season"),
            new Way("/post", "Post and health"));

    public List<Way> ways() {
        return WAYS;
    }

    public Reader reader() {
        return new Reader(standing.farm().zone(), standing.farm().units());
    }

    /** When the order that is shown was worked out, for instance {@code Mon 5:00 am}. */
    public String asOf() {
        return standing.round()
                .map(round -> reader().clock().dayTime(round.outlook().asOf()))
                .orElse("not yet");
    }

    public Optional<Standing.Effect> said() {
        return saidKey.flatMap(standing::effect);
    }

    public String ago(Instant at) {
        Duration past = Duration.between(at, now);
        return past.toMinutes() < 1
                ? "just now"
                : past.toHours() < 1
                        ? past.toMinutes() + " min ago"
                        : reader().clock().dayTime(at);
    }

    /** A new key for a form, so that sending it twice says it once. */
    public String key() {
        return UUID.randomUUID().toString();
    }

    public boolean crew() {
        return visitor.may(Role.CREW);
    }

    public boolean lead() {
        return visitor.may(Role.LEAD);
    }

    /** The page of a field. */
    public static String fieldPath(String field) {
        return "/field/" + encoded(field);
    }

    /** A name as a step of a path. */
    static String encoded(String name) {
        return URLEncoder.encode(name, StandardCharsets.UTF_8).replace("+", "%20");
    }

    /** Today's work of one person. */
    public static String whoPath(String person) {
        return "/?who=" + URLEncoder.encode(person, StandardCharsets.UTF_8);
    }

    /** What goes before anything that is said here. */
    public static String whatGoesBefore() {
        return CautionWords.WHAT_GOES_BEFORE;
    }

    /** The date of the farm, as date boxes want it. */
    public String today() {
        return now.atZone(standing.farm().zone()).toLocalDate().toString();
    }

    /** A time of day as the reader writes it, to show how. */
    public String sampleTime() {
        return reader().clock().units() == UnitSystem.US_CUSTOMARY ? "7:30 am" : "07:30";
    }
}
