package rainward.feed.wire;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import okhttp3.OkHttpClient;
import rainward.feed.reading.Unreadable;
import rainward.feed.terms.FeedSettings;
import rainward.feed.terms.Pacing;
import rainward.feed.wire.Answer.Given;
import rainward.feed.wire.Answer.How;
import rainward.feed.wire.Answer.Refused;
import rainward.feed.wire.Answer.Why;
import rainward.feed.wire.Wire.Broken;
import rainward.feed.wire.Wire.Reply;
import rainward.weather.source.HostPauses;
import rainward.weather.source.LastGoodCopies;
import rainward.weather.source.LastGoodCopies.Copy;
import rainward.weather.source.LastGoodCopies.Times;
import rainward.weather.source.PullOutcome.Kind;
import rainward.weather.source.RawPull;

/**
 * Asks public services the way they want to be asked: not before the kept copy expires, with a
 * condition, with a name, few tries with jittered waits, and not at all while a host is in trouble.
 * The last good copy is replaced only by an answer that could be read.
 */
public final class PoliteClient {

    private static final Duration BUDGET = Duration.ofMinutes(3);
    private static final Duration LONGEST_WAIT = Duration.ofSeconds(60);
    private static final Duration SKEW = Duration.ofMinutes(5);

    private final Wire wire;
    private final FeedSettings settings;
    private final LastGoodCopies copies;
    private final Breaker breaker;
    private final Pacing pacing;
    private final Map<String, Late> refused = new ConcurrentHashMap<>();

    /**
     * A client with connections of its own.
     *
     * @param settings who asks, where and how patiently
     * @param copies where last good answers are kept
     * @param pauses which hosts are left alone
     * @param pacing waits between tries
     */
    public PoliteClient(
            FeedSettings settings, LastGoodCopies copies, HostPauses pauses, Pacing pacing) {
        this(Connections.through(settings.gateway()), settings, new Memory(copies, pauses), pacing);
    }

    public PoliteClient(OkHttpClient base, FeedSettings settings, Memory memory, Pacing pacing) {
        this.wire = new Wire(base, settings);
        this.settings = settings;
        this.copies = memory.copies();
        this.breaker = new Breaker(memory.pauses());
        this.pacing = pacing;
    }

    /**
     * What outlives the process.
     *
     * @param copies last good answers
     * @param pauses hosts left alone
     */
    public record Memory(LastGoodCopies copies, HostPauses pauses) {}

    /** A refusal, and the moment of the pull it belongs to. */
    private record Late(Instant asOf, Why why) {}

    /** Reads an answer. */
    @FunctionalInterface
    public interface Reader<T> {
        T read(Copy copy) throws Unreadable;
    }

    public FeedSettings settings() {
        return settings;
    }

    /** Asks, or answers from the kept copy while that is fresh. A new answer is not yet kept. */
    public <T> Answer<T> ask(Ask ask, Round round, Reader<T> reader) {
        Optional<Given<T>> kept = kept(ask, reader);
        if (kept.isPresent() && Freshness.holds(kept.get().copy(), ask, round.now())) {
            return kept.get();
        }
        Late late = refused.get(ask.address());
        if (late != null && late.asOf().equals(round.asOf())) {
            return new Refused<>(late.why(), kept);
        }
        Optional<Why> barred = breaker.barred(ask, round.now());
        if (barred.isPresent()) {
            return new Refused<>(barred.get(), kept);
        }
        Attempt<T> attempt = new Attempt<>(ask, round, reader, kept);
        Answer<T> answer = tryAll(attempt);
        if (answer instanceof Refused<T> no) {
            refused.put(ask.address(), new Late(round.asOf(), no.why()));
        } else {
            refused.remove(ask.address());
        }
        return answer;
    }

    /** Notes that an answer is of no use: others in the same pull need not ask for it again. */
    public void refuse(Ask ask, Round round, Why why) {
        refused.put(ask.address(), new Late(round.asOf(), why));
    }

    /** Keeps a new answer as the last good one. */
    public void keep(Given<?> given) {
        if (given.how() != How.KEPT) {
            copies.keep(given.copy());
        }
    }

    /** The last good answer to a question, if there is one that can be read. */
    public <T> Optional<Given<T>> kept(Ask ask, Reader<T> reader) {
        Optional<Copy> copy = copies.find(ask.address());
        if (copy.isEmpty() || !Sha256.of(copy.get().body()).equals(copy.get().sha256())) {
            return Optional.empty();
        }
        try {
            return Optional.of(new Given<>(reader.read(copy.get()), copy.get(), How.KEPT));
        } catch (Unreadable e) {
            return Optional.empty();
        }
    }

    /** One question on its way. */
    private record Attempt<T>(Ask ask, Round round, Reader<T> reader, Optional<Given<T>> kept) {}

    private <T> Answer<T> tryAll(Attempt<T> attempt) {
        int tries = breaker.inTrouble(attempt.ask()) ? 1 : settings.pace().tries();
        for (int n = 0; ; n++) {
            Why why;
            try {
                Given<T> given = once(attempt, accept(attempt.ask(), n));
                breaker.answered(attempt.ask());
                return given;
            } catch (Broken broken) {
                why = broken.why();
            }
            Optional<Duration> wait = n + 1 < tries ? waitFor(why, attempt, n) : Optional.empty();
            if (wait.isEmpty() || !pacing.waited(wait.get())) {
                Why told = breaker.failed(attempt.ask(), why, attempt.round());
                return new Refused<>(told, attempt.kept());
            }
            attempt.round().waited(wait.get());
        }
    }

    private static String accept(Ask ask, int n) {
        return n == 0
                ? ask.wish().accept()
                : ask.wish().otherAccept().orElse(ask.wish().accept());
    }

    /** Wait before another try; empty where there should be none. */
    private Optional<Duration> waitFor(Why why, Attempt<?> attempt, int n) {
        Round round = attempt.round();
        Optional<Duration> asked = why.retryAt().map(at -> Duration.between(round.now(), at));
        Optional<Duration> wait = switch (why.kind()) {
            case UNREACHABLE, SERVER_FAULT -> Optional.of(asked.orElseGet(() -> pacing.backOff(n)));
            case THROTTLED -> n > 0 ? Optional.empty() : throttled(attempt.ask(), asked);
            case UNREADABLE ->
                n == 0 && attempt.ask().wish().otherAccept().isPresent()
                        ? Optional.of(pacing.shortPause())
                        : Optional.empty();
            default -> Optional.empty();
        };
        return wait.filter(w -> w.compareTo(LONGEST_WAIT) <= 0)
                .filter(w -> round.waited().plus(w).compareTo(BUDGET) <= 0);
    }

    private Optional<Duration> throttled(Ask ask, Optional<Duration> asked) {
        if (asked.isPresent() || !ask.service().code().startsWith("nws")) {
            return asked;
        }
        return Optional.of(pacing.shortPause());
    }

    private <T> Given<T> once(Attempt<T> attempt, String accept) throws Broken {
        Ask ask = attempt.ask();
        Round round = attempt.round();
        Optional<Copy> copy =
                ask.unconditional() ? Optional.empty() : attempt.kept().map(Given::copy);
        Reply reply = wire.send(ask, accept, conditions(copy));
        Instant now = round.now();
        record(ask, reply, round);
        if (reply.status() == 304 && attempt.kept().isPresent()) {
            return confirmed(attempt.kept().get(), reply, now);
        }
        if (reply.status() != 200 && reply.status() != 203) {
            throw new Broken(Refusals.of(ask.service(), reply, now));
        }
        if (reply.status() == 203) {
            round.note(ask.service().code() + " says that this product is about to be retired");
        }
        return read(attempt, reply);
    }

    private static <T> Given<T> confirmed(Given<T> kept, Reply reply, Instant now) {
        Map<String, String> headers = new TreeMap<>(kept.copy().headers());
        headers.putAll(reply.headers());
        return new Given<>(kept.value(), kept.copy().confirmed(now, headers), How.CONFIRMED);
    }

    private static <T> Given<T> read(Attempt<T> attempt, Reply reply) throws Broken {
        Instant now = attempt.round().now();
        try {
            requireJson(reply);
            Copy copy = new Copy(
                    attempt.ask().address(),
                    reply.headers(),
                    reply.body(),
                    Sha256.of(reply.body()),
                    new Times(now, now));
            return new Given<>(attempt.reader().read(copy), copy, How.NEW);
        } catch (Unreadable e) {
            throw new Broken(new Why(Kind.UNREADABLE, e.words(), reply.status(), Optional.empty()));
        }
    }

    private static void requireJson(Reply reply) throws Unreadable {
        if (reply.body().length == 0) {
            throw new Unreadable("sent an empty answer");
        }
        String type = reply.header("content-type").toLowerCase(Locale.ROOT);
        String head = new String(
                        reply.body(), 0, Math.min(200, reply.body().length), StandardCharsets.UTF_8)
                .stripLeading();
        if (type.contains("html") || head.startsWith("<")) {
            throw new Unreadable("sent a web page instead of data");
        }
    }

    private static Map<String, String> conditions(Optional<Copy> copy) {
        Map<String, String> conditions = new TreeMap<>();
        copy.map(c -> c.headers().get("etag"))
                .ifPresent(tag -> conditions.put("If-None-Match", tag));
        copy.map(c -> c.headers().get("last-modified"))
                .ifPresent(at -> conditions.put("If-Modified-Since", at));
        return conditions;
    }

    private void record(Ask ask, Reply reply, Round round) {
        round.received(new RawPull(
                ask.service().code(),
                ask.address(),
                reply.status(),
                reply.headers(),
                reply.body(),
                round.now(),
                Optional.empty()));
        if (settings.pace().watchClock()) {
            RetryAfter.date(reply.header("date"))
                    .map(theirs -> Duration.between(theirs, round.now()))
                    .filter(ahead -> ahead.abs().compareTo(SKEW) > 0)
                    .ifPresent(ahead -> round.note(skewWords(ask, ahead)));
        }
    }

    private static String skewWords(Ask ask, Duration ahead) {
        return "this PC's clock is " + ahead.abs().toMinutes() + " minutes "
                + (ahead.isNegative() ? "behind" : "ahead of") + " the clock of "
                + ask.service().code() + "; set the PC's clock";
    }
}
