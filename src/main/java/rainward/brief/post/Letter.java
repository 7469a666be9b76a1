package rainward.brief.post;

import java.awt.image.BufferedImage;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import rainward.farm.Require;

/**
 * What one recipient gets about one event, finished but for its envelope.
 *
 * @param event what it is about, for instance {@code brief/2026-07-16}
 * @param earlier events of the letters on the same thing before this one, the first first
 * @param subject one line
 * @param written when, in which zone its date is shown, and how long it is of use
 * @param body what it says
 */
public record Letter(
        String event, List<String> earlier, String subject, Written written, Body body) {

    public Letter {
        earlier = List.copyOf(earlier);
        Require.named("event", event);
        Require.that(
                subject.chars().noneMatch(Character::isISOControl),
                "a subject is one line, without control characters");
    }

    /**
     * When it was written.
     *
     * @param at when
     * @param zone in which its date is shown
     * @param usefulUntil when it comes too late, where that is sooner than mail is given up
     */
    public record Written(Instant at, ZoneId zone, Optional<Instant> usefulUntil) {

        public Written(Instant at, ZoneId zone) {
            this(at, zone, Optional.empty());
        }
    }

    /**
     * What it says.
     *
     * @param text stands alone
     * @param page the same as a page, if there is one
     * @param pictures that the page shows
     * @param calendar of the work, RFC 5545, if there is one
     * @param lines the same for programs, one for each piece of work
     */
    public record Body(
            String text,
            Optional<String> page,
            List<Picture> pictures,
            Optional<String> calendar,
            List<Line> lines) {

        public Body {
            pictures = List.copyOf(pictures);
            lines = List.copyOf(lines);
            Require.that(page.isPresent() || pictures.isEmpty(), "pictures without a page");
        }

        /** For people only. */
        public Body(
                String text,
                Optional<String> page,
                List<Picture> pictures,
                Optional<String> calendar) {
            this(text, page, pictures, calendar, List.of());
        }

        /** Nothing but text. */
        public static Body ofText(String text) {
            return new Body(text, Optional.empty(), List.of(), Optional.empty(), List.of());
        }
    }

    /**
     * A picture in a page.
     *
     * @param contentId by which the page names it, without {@code cid:}
     * @param image to be shown
     */
    public record Picture(String contentId, BufferedImage image) {}
}
