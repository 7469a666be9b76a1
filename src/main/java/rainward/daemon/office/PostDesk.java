package rainward.daemon.office;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rainward.brief.Alert;
import rainward.brief.Brief;
import rainward.brief.calendar.WorkCalendar;
import rainward.brief.making.BriefInput;
import rainward.brief.making.BriefMaker;
import rainward.brief.post.Letter;
import rainward.brief.post.LetterMaker;
import rainward.brief.post.Outgoing;
import rainward.brief.post.Recipient;
import rainward.brief.post.RetrySchedule;
import rainward.cycle.Cycle;
import rainward.daemon.settings.Settings;
import rainward.mail.BundledLettering;
import rainward.mail.Courier;
import rainward.mail.MimeLetter;
import rainward.mail.Packing;
import rainward.mail.Postman;
import rainward.mail.SmtpCourier;
import rainward.mail.SmtpSettings;
import rainward.mail.WebhookCourier;
import rainward.store.Books;
import rainward.store.round.BriefLog;
import rainward.store.round.WindowLog;
import rainward.window.StormWindow;
import rainward.window.WindowDecision;

/** Where briefs and alerts are written and posted. */
public final class PostDesk {

    private static final String TOLD = "told";

    private static final Duration HOOK_TIMEOUT = Duration.ofSeconds(30);

    private final Office office;
    private final BriefDesk desk;
    private final Map<Outgoing.Channel, Courier> couriers;

    /** A desk that hands mail to the server of the settings, where there is one. */
    public PostDesk(Office office) {
        this(office, couriers(office));
    }

    /** A desk with its own couriers. */
    public PostDesk(Office office, Map<Outgoing.Channel, Courier> couriers) {
        this.office = office;
        this.desk = new BriefDesk(office);
        this.couriers = Map.copyOf(couriers);
    }

    private static Map<Outgoing.Channel, Courier> couriers(Office office) {
        Map<Outgoing.Channel, Courier> couriers = new EnumMap<>(Outgoing.Channel.class);
        office.settings()
                .mail()
                .server()
                .ifPresent(server ->
                        couriers.put(Outgoing.Channel.MAIL, new SmtpCourier(smtp(office, server))));
        Map<String, byte[]> secrets = new TreeMap<>();
        office.settings()
                .mail()
                .hookSecrets()
                .forEach((where, secret) ->
                        secrets.put(where, secret.reveal().getBytes(StandardCharsets.UTF_8)));
        couriers.put(Outgoing.Channel.WEBHOOK, new WebhookCourier(HOOK_TIMEOUT, secrets));
        return couriers;
    }

    static SmtpSettings smtp(Office office, Settings.MailServer server) {
        return new SmtpSettings(
                new SmtpSettings.Server(server.host(), server.port()),
                switch (server.security()) {
                    case STARTTLS -> SmtpSettings.Security.STARTTLS;
                    case TLS -> SmtpSettings.Security.TLS;
                    case NONE -> SmtpSettings.Security.PLAIN;
                },
                server.login()
                        .map(login -> new SmtpSettings.Login(
                                login.user(), login.password().reveal())),
                new SmtpSettings.Sender(office.settings().farm().name(), server.from()),
                server.timeout());
    }

    /**
     * The brief of a day, as values; nothing is written down.
     *
     * @param result of the round it tells of
     * @param dueAt when it was to go out
     */
    public Brief brief(Cycle.Result result, Instant dueAt) {
        BriefDesk.Occasion occasion = desk.occasion(result, dueAt);
        return office.store().read(books -> BriefMaker.make(desk.input(books, result, occasion)));
    }

    /**
     * A brief that was written.
     *
     * @param brief as values
     * @param told of windows, in mails of their own
     */
    public record Morning(Brief brief, List<WindowDecision> told) {}

    /**
     * Writes the brief of a day into the outbox and gives its order out, once.
     *
     * @return empty where the day has had its brief
     */
    public Optional<Morning> writeBrief(Cycle.Result result, Instant dueAt) {
        BriefDesk.Occasion occasion = desk.occasion(result, dueAt);
        return office.store().inTransaction(books -> {
            Brief brief = BriefMaker.make(desk.input(books, result, occasion));
            Instant now = result.outlook().asOf();
            boolean first = books.briefs()
                    .take(new BriefLog.WrittenBrief(
                            brief.heading().day(),
                            now,
                            now,
                            brief.heading().written().late(),
                            "rank 1: " + first(brief)));
            if (!first) {
                return Optional.<Morning>empty();
            }
            PlanningDesk.giveOut(books, result, "morning brief");
            WorkCalendar calendar = new CalendarDesk(office).follow(books, result);
            List<WindowDecision> told = tellWindows(books, result);
            books.lastKnown()
                    .put(
                            BriefDesk.LAST_BRIEF,
                            now,
                            new BriefInput.LastBrief(
                                    result.outlook().plan(), result.outlook().rain()));
            for (Recipient recipient : office.settings().mail().recipients()) {
                letters()
                        .brief(brief, calendar, recipient)
                        .ifPresent(l -> put(books, l, recipient, now));
            }
            return Optional.of(new Morning(brief, told));
        });
    }

    private static String first(Brief brief) {
        return brief.orders().today().stream()
                .map(line -> line.place().field())
                .findFirst()
                .orElse("nothing today");
    }

    /** Gives a new order out and writes what is to be said of windows, in one transaction. */
    public List<WindowDecision> writeAlerts(Cycle.Result result, String cause) {
        return office.store().inTransaction(books -> {
            PlanningDesk.giveOut(books, result, cause);
            new CalendarDesk(office).follow(books, result);
            return tellWindows(books, result);
        });
    }

    private List<WindowDecision> tellWindows(Books books, Cycle.Result result) {
        List<WindowDecision> told = result.windows().decisions().stream()
                .filter(WindowDecision::send)
                .toList();
        told.forEach(decision -> tell(books, decision, result.outlook().asOf()));
        return told;
    }

    private void tell(Books books, WindowDecision decision, Instant now) {
        StormWindow window = decision.window();
        int number = 1
                + (int) books.windows().of(window.id()).stream()
                        .filter(event -> event.kind().equals(TOLD))
                        .count();
        books.windows()
                .add(new WindowLog.WindowEvent(
                        window.id(), now, TOLD, decision.step() + ": " + decision.words()));
        Alert alert = Alert.of(
                new Alert.Origin(office.settings().farm().name(), office.zone(), now),
                new Alert.WindowNews(window, step(decision.step()), number),
                decision.words());
        for (Recipient recipient : office.settings().mail().recipients()) {
            put(books, letters().alert(alert, recipient), recipient, now);
        }
    }

    /**
     * Writes what the service has to say of itself to the first who gets the whole brief, at any
     * hour and once.
     *
     * @return false where it was said before, or where there is nobody
     */
    public boolean writeOwn(Letter letter) {
        Optional<Recipient> owner = office.settings().mail().recipients().stream()
                .filter(r -> r.wants().share() == Recipient.Share.ALL)
                .findFirst();
        return owner.isPresent()
                && office.store()
                        .inTransaction(books -> put(books, letter, owner.get(), office.now()));
    }

    /** Passes on what became of a public alert; the end of one never told of is no news. */
    public void writePublic(AlertDesk.Turned turned) {
        Instant now = office.now();
        office.store().inTransaction(books -> {
            int number = 1 + books.outbox().eventsOf(Alert.publicThread(turned.chain()));
            if (number == 1 && turned.step() == Alert.Step.CLOSED) {
                return number;
            }
            Alert alert = Alert.of(
                    new Alert.Origin(office.settings().farm().name(), office.zone(), now),
                    new Alert.PublicNews(
                            turned.local(),
                            number == 1 ? Alert.Step.OPENED : turned.step(),
                            number,
                            turned.chain()),
                    why(turned));
            for (Recipient recipient : office.settings().mail().recipients()) {
                put(books, letters().alert(alert, recipient), recipient, now);
            }
            return number;
        });
    }

    private static String why(AlertDesk.Turned turned) {
        return switch (turned.step()) {
            case OPENED -> turned.local().alert().message().headline();
            case CHANGED -> "the service has changed its event, severity or hours";
            case CLOSED -> "the service has called it off before its time";
        };
    }

    private static Alert.Step step(WindowDecision.Step step) {
        return switch (step) {
            case OPEN -> Alert.Step.OPENED;
            case CHANGE, KEEP -> Alert.Step.CHANGED;
            case CLOSE -> Alert.Step.CLOSED;
        };
    }

    private boolean put(Books books, Letter letter, Recipient recipient, Instant now) {
        Duration triedFor = office.settings().mail().triedFor();
        Instant from = recipient.quiet().sendFrom(letter.written());
        if (!from.isAfter(now)) {
            // What breaks the quiet takes along what it follows on.
            books.outbox().hasten(letter.earlier(), recipient.address().where(), now);
        }
        return books.outbox().put(new Packing(mime(), triedFor).pack(letter, recipient, from));
    }

    private MimeLetter mime() {
        String from = office.settings()
                .mail()
                .server()
                .map(Settings.MailServer::from)
                .orElse("rainward@localhost");
        String farm = office.settings().farm().name();
        return new MimeLetter(new SmtpSettings.Sender(farm, from), farm + " field order");
    }

    /** Hands over all that is due; how many were taken. */
    public int post() {
        return new Postman(office.store().outbox(), couriers, RetrySchedule.USUAL)
                .drain(office.clock()::instant);
    }

    /** A letter as the mail that it becomes. */
    public byte[] mail(Letter letter, Recipient recipient) {
        return mime().bytes(letter, recipient);
    }

    /** The letter of a brief to somebody, for a look before it is sent. */
    public Optional<Letter> letter(Brief brief, WorkCalendar calendar, Recipient recipient) {
        return letters().brief(brief, calendar, recipient);
    }

    private static LetterMaker letters() {
        return new LetterMaker(BundledLettering.read());
    }
}
