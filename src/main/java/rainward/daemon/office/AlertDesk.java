package rainward.daemon.office;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rainward.brief.Alert;
import rainward.brief.LocalAlert;
import rainward.brief.making.AlertSteps;
import rainward.cycle.AlertStops;
import rainward.daemon.settings.Settings;
import rainward.farm.Property;
import rainward.farm.Window;
import rainward.feed.SourceWatch;
import rainward.feed.alert.AlertFeed;
import rainward.feed.terms.Service;
import rainward.feed.wire.PoliteClient;
import rainward.store.Books;
import rainward.weather.alert.AlertLedger;
import rainward.weather.alert.AlertState;
import rainward.weather.alert.PublicAlert;
import rainward.weather.source.SourceStatus;

/** Where public alerts are asked for and kept; only the US service has them by place. */
public final class AlertDesk {

    private final Office office;
    private final AlertFeed feed;
    private final SourceWatch watch;

    AlertDesk(Office office, PoliteClient client, SourceWatch watch) {
        this.office = office;
        this.watch = watch;
        this.feed = new AlertFeed(client);
    }

    /** News of one event and the farms it touches. */
    public record Turned(LocalAlert local, Alert.Step step, String chain) {}

    /** Asks for every property; what was issued, changed or called off since the last look. */
    List<Turned> pullAll() {
        if (!office.settings().weather().sources().ask(Settings.Source.NWS)) {
            return List.of();
        }
        Instant now = office.now();
        Map<String, AlertSteps.Told> news = new LinkedHashMap<>();
        Map<String, List<String>> where = new TreeMap<>();
        for (Property property : office.roster().properties().values()) {
            for (AlertSteps.Told told : pull(property, now)) {
                news.merge(told.alert().id(), told, AlertDesk::furthest);
                where.computeIfAbsent(told.alert().id(), id -> new ArrayList<>())
                        .add(property.name());
            }
        }
        return news.values().stream()
                .map(told -> new Turned(
                        new LocalAlert(
                                told.alert(), where.getOrDefault(told.alert().id(), List.of())),
                        told.step(),
                        told.chain()))
                .toList();
    }

    /** New to one farm and known to another is a change for the crew. */
    private static AlertSteps.Told furthest(AlertSteps.Told a, AlertSteps.Told b) {
        return a.step().compareTo(b.step()) >= 0 ? a : b;
    }

    private List<AlertSteps.Told> pull(Property property, Instant now) {
        AlertFeed.Poll poll = feed.pull(property.place(), now);
        watch.saw(
                Service.NWS_ALERTS.code(),
                poll.alerts().isPresent() ? SourceStatus.State.OK : SourceStatus.State.DOWN,
                String.join("; ", poll.notes()),
                now);
        return office.store().inTransaction(books -> {
            AlertLedger before = ledger(books, property.name());
            AlertLedger after = before.after(poll.alerts(), now);
            books.lastKnown().put(nameOf(property.name()), now, after);
            return AlertSteps.between(before, after, now);
        });
    }

    /** Alerts that are in force or announced, each with the farms it touches. */
    static List<LocalAlert> standing(Books books) {
        Map<String, PublicAlert> alerts = new LinkedHashMap<>();
        Map<String, List<String>> where = new TreeMap<>();
        for (Property property : books.fields().properties()) {
            for (AlertState state : ledger(books, property.name()).standing()) {
                alerts.put(state.alert().id(), state.alert());
                where.computeIfAbsent(state.alert().id(), id -> new ArrayList<>())
                        .add(property.name());
            }
        }
        return alerts.values().stream()
                .map(alert -> new LocalAlert(alert, where.getOrDefault(alert.id(), List.of())))
                .toList();
    }

    /** Alerts that stand at one property, as of the last pull. */
    static List<PublicAlert> at(Books books, String property) {
        return ledger(books, property).standing().stream()
                .map(AlertState::alert)
                .toList();
    }

    /** The hours that alerts take of a field, as of the last pull. */
    public static AlertStops stops(Office office, String field, Window horizon) {
        return new AlertStops(
                office.store()
                        .read(books -> books.fields()
                                .named(field)
                                .map(known -> at(books, known.property()))
                                .orElse(List.of())),
                horizon);
    }

    /** Alerts that stand at one property, as of the last pull. */
    public static List<PublicAlert> at(Office office, String property) {
        return office.store().read(books -> at(books, property));
    }

    private static AlertLedger ledger(Books books, String property) {
        return books.lastKnown()
                .find(nameOf(property), AlertLedger.class)
                .orElse(AlertLedger.EMPTY);
    }

    private static String nameOf(String property) {
        return "alerts/" + property;
    }
}
