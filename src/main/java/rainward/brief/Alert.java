package rainward.brief;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.Optional;
import rainward.window.StormWindow;
import rainward.window.WindowDecision;

/**
 * News that cannot wait for the morning; every string is one harmless line.
 *
 * @param origin whose, when
 * @param news what has happened
 * @param why it is sent, in words
 */
public record Alert(Origin origin, News news, String why) {

    /**
     * What was decided about a window, where a message is to go out.
     *
     * @param number counts the mails on this window, this one counted in, from 1
     */
    public static Optional<Alert> of(Origin origin, WindowDecision decision, int number) {
        return Step.of(decision.step())
                .filter(step -> decision.send())
                .map(step -> of(
                        origin, new WindowNews(decision.window(), step, number), decision.words()));
    }

    /** A storm window that opened, changed or closed. */
    public static Alert of(Origin origin, WindowNews news, String why) {
        var harmless = new WindowNews(Literal.of(news.window()), news.step(), news.number());
        return new Alert(origin.harmless(), harmless, Literal.of(why));
    }

    /** An alert of a public service that was issued, changed or ended. */
    public static Alert of(Origin origin, PublicNews news, String why) {
        var harmless =
                new PublicNews(news.alert().harmless(), news.step(), news.number(), news.firstId());
        return new Alert(origin.harmless(), harmless, Literal.of(why));
    }

    /** What all mails on one public alert share. */
    public static String publicThread(String firstId) {
        return "alert/" + firstId;
    }

    /**
     * Whose, when.
     *
     * @param farm what the crew calls the whole
     * @param zone of the farm
     * @param at when it is written
     */
    public record Origin(String farm, ZoneId zone, Instant at) {

        private Origin harmless() {
            return new Origin(Literal.of(farm), zone, at);
        }
    }

    /** What became of it. */
    public enum Step {
        OPENED,
        CHANGED,
        CLOSED;

        private static Optional<Step> of(WindowDecision.Step step) {
            return switch (step) {
                case OPEN -> Optional.of(OPENED);
                case CHANGE -> Optional.of(CHANGED);
                case CLOSE -> Optional.of(CLOSED);
                case KEEP -> Optional.empty();
            };
        }
    }

    /** What has happened. */
    public sealed interface News {

        Step step();

        /** Counts the mails on the same thing, from 1. */
        int number();

        /** The same for all mails on the same thing. */
        String thread();

        /** When it is too late to act on it; empty where that is not known. */
        Optional<Instant> usefulUntil();
    }

    /**
     * News of a storm window.
     *
     * @param window as it is now
     * @param step what became of it
     * @param number counts the mails on this window, from 1
     */
    public record WindowNews(StormWindow window, Step step, int number) implements News {

        @Override
        public String thread() {
            return "window/" + window.id();
        }

        /**
         * The last moment at which a field that fits may be started; of a closing, and where
         * nothing fits, the middle arrival of the rain that was told.
         */
        @Override
        public Optional<Instant> usefulUntil() {
            Instant arrival = window.arrival().p50();
            return step == Step.CLOSED
                    ? Optional.of(arrival)
                    : window.fits().stream()
                            .map(StormWindow.Fit::lastSafeStart)
                            .max(Comparator.naturalOrder())
                            .or(() -> Optional.of(arrival));
        }
    }

    /**
     * News of a public alert.
     *
     * @param alert as it is now
     * @param step what became of it
     * @param number counts the mails on this alert, from 1
     * @param firstId id of the first message in the chain that this one stands in for
     */
    public record PublicNews(LocalAlert alert, Step step, int number, String firstId)
            implements News {

        @Override
        public String thread() {
            return publicThread(firstId);
        }

        /** The end of the event that is warned of. */
        @Override
        public Optional<Instant> usefulUntil() {
            return alert.alert().times().endsAt();
        }
    }
}
