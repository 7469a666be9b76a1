package rainward.daemon.service;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rainward.cycle.Cycle;
import rainward.daemon.office.AlertDesk;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.schedule.DailySlot;
import rainward.store.Books;
import rainward.weather.alert.PublicAlert;
import rainward.weather.source.PullOutcome;
import rainward.window.WindowDecision;

/**
 * The pieces of work that come due, whoever calls for them: the schedule, a command or the demo.
 */
public final class Rounds {

    private static final Logger LOG = LoggerFactory.getLogger(Rounds.class);

    /** A brief this long after its hour would be about a day that is over. */
    private static final Duration BRIEF_STILL_OF_USE = Duration.ofHours(18);

    private static final String IN_USE = "service in use";

    private final Office office;
    private final WeatherDesk weather;
    private final PlanningDesk planning;
    private final PostDesk post;

    /** Orders are made one after the other, whoever asks for them. */
    private final Object ordering = new Object();

    private volatile Hearer hearer = Hearer.NOBODY;

    public Rounds(Office office, WeatherDesk weather, PostDesk post) {
        this.office = office;
        this.weather = weather;
        this.planning = new PlanningDesk(office);
        this.post = post;
    }

    /**
     * What a round came to.
     *
     * @param pulls by property
     * @param result of the reckoning
     * @param told of windows, in this round
     * @param publicAlerts passed on in this round
     */
    public record Turn(
            List<WeatherDesk.PropertyPull> pulls,
            Cycle.Result result,
            List<WindowDecision> told,
            List<AlertDesk.Turned> publicAlerts) {}

    /** Asks for the weather, reckons, gives the order out and writes alerts. */
    public Turn turn() {
        List<WeatherDesk.PropertyPull> pulls = pull();
        List<AlertDesk.Turned> publicAlerts = alerts();
        Given given = giveOut("new forecast");
        return new Turn(pulls, given.result(), given.told(), publicAlerts);
    }

    /** Asks for public alerts and writes what is news to field work to those who want it. */
    public List<AlertDesk.Turned> alerts() {
        List<AlertDesk.Turned> news =
                weather.pullAlerts().stream().filter(Rounds::mattersToFieldWork).toList();
        news.forEach(post::writePublic);
        return news;
    }

    /** Hears of rounds, one after the other. */
    public interface Hearer {

        /** Where nobody wants to know. */
        Hearer NOBODY = new Hearer() {
            @Override
            public void begins() {}

            @Override
            public void reckoned(Cycle.Result result) {}
        };

        /** A round reads the records now; what is written later is not in it. */
        void begins();

        /** The same round is reckoned, and given out where it is to be. */
        void reckoned(Cycle.Result result);
    }

    /** An order that was given out, and what was said of windows. */
    private record Given(Cycle.Result result, List<WindowDecision> told) {}

    private Given giveOut(String cause) {
        synchronized (ordering) {
            hearer.begins();
            Cycle.Result result = planning.reckon();
            List<WindowDecision> told = post.writeAlerts(result, cause);
            told.forEach(d -> LOG.info("window {} {}: {}", d.window().id(), d.step(), d.words()));
            hearer.reckoned(result);
            return new Given(result, told);
        }
    }

    /** Makes the order anew from what is recorded and gives it out; no forecast is asked for. */
    public Cycle.Result replan(String cause) {
        return giveOut(cause).result();
    }

    /** Reckons as things stand, so that something can be shown; nothing is given out. */
    public void look() {
        synchronized (ordering) {
            hearer.begins();
            hearer.reckoned(planning.reckon());
        }
    }

    /** Hears of every round from now on. */
    public void tell(Hearer other) {
        hearer = other;
    }

    private List<WeatherDesk.PropertyPull> pull() {
        List<WeatherDesk.PropertyPull> pulls = weather.pullAll();
        pulls.forEach(Rounds::log);
        weather.pullObserved();
        return pulls;
    }

    /** Other alerts, of boating or fire weather for instance, stay with the public service. */
    private static boolean mattersToFieldWork(AlertDesk.Turned turned) {
        return turned.local().alert().danger() != PublicAlert.Danger.OTHER;
    }

    private static void log(WeatherDesk.PropertyPull pulled) {
        if (pulled.pull().outcome() instanceof PullOutcome.Failed failed) {
            LOG.warn("{}: {}", pulled.property(), failed.words());
        }
    }

    /** Writes today's brief, with fresh weather, unless it is written; then sends what is due. */
    public Optional<PostDesk.Morning> brief() {
        DailySlot slot = new DailySlot(office.settings().mail().briefAt(), office.zone());
        Instant now = office.now();
        LocalDate day = slot.latestDay(now);
        Instant due = slot.on(day);
        if (Duration.between(due, now).compareTo(BRIEF_STILL_OF_USE) > 0) {
            return Optional.empty();
        }
        if (office.store().read(books -> wasBriefed(books, day))) {
            return Optional.empty();
        }
        pull();
        alerts();
        Optional<PostDesk.Morning> brief = writeBrief(due);
        send();
        return brief;
    }

    /** A day has its brief, or the next one has, because the clock was set back since. */
    private static boolean wasBriefed(Books books, LocalDate day) {
        return Stream.of(day, day.plusDays(1))
                .anyMatch(d -> books.briefs().of(d).isPresent());
    }

    private Optional<PostDesk.Morning> writeBrief(Instant due) {
        synchronized (ordering) {
            hearer.begins();
            Cycle.Result result = planning.reckon();
            Optional<PostDesk.Morning> brief = post.writeBrief(result, due);
            hearer.reckoned(result);
            return brief;
        }
    }

    /** When the service ran here for the first time. */
    record InUse(Instant since) {}

    /** Notes the first start; briefs that were due before it are nobody's. */
    void startsNow() {
        office.store().inTransaction(books -> {
            if (books.lastKnown().find(IN_USE, InUse.class).isEmpty()) {
                books.lastKnown().put(IN_USE, office.now(), new InUse(office.now()));
            }
            return IN_USE;
        });
    }

    /**
     * A brief whose turn was lost, because the process died in it or the schedule's file is gone,
     * is made up for.
     */
    public void briefIfMissed() {
        DailySlot slot = new DailySlot(office.settings().mail().briefAt(), office.zone());
        LocalDate day = slot.latestDay(office.now());
        boolean wanted = office.store().read(books -> {
            boolean before = books.briefs().lastBefore(day).isPresent();
            boolean running = books.lastKnown()
                    .find(IN_USE, InUse.class)
                    .filter(use -> use.since().isBefore(slot.on(day)))
                    .isPresent();
            return before || running;
        });
        if (wanted) {
            brief();
        }
    }

    /** Hands over the mail that is due; how many were taken. */
    public int send() {
        return post.post();
    }
}
