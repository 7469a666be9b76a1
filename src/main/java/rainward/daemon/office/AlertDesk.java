package rainward.daemon.office;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rainward.brief.LocalAlert;
import rainward.daemon.settings.Settings;
import rainward.farm.Property;
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
final class AlertDesk {

    private final Office office;
    private final AlertFeed feed;
    private final SourceWatch watch;

    AlertDesk(Office office, PoliteClient client, SourceWatch watch) {
        this.office = office;
        this.watch = watch;
        this.feed = new AlertFeed(client);
    }

    /** Asks for every property; alerts of events that nobody has been told of, with their farms. */
    List<LocalAlert> pullAll() {
        if (!office.settings().weather().sources().ask(Settings.Source.NWS)) {
            return List.of();
        }
        Instant now = office.now();
        Map<String, PublicAlert> fresh = new LinkedHashMap<>();
        Map<String, List<String>> where = new TreeMap<>();
        for (Property property : office.roster().properties().values()) {
            AlertFeed.Poll poll = feed.pull(property.place(), now);
            watch.saw(
                    Service.NWS_ALERTS.code(),
                    poll.alerts().isPresent() ? SourceStatus.State.OK : SourceStatus.State.DOWN,
                    String.join("; ", poll.notes()),
                    now);
            AlertLedger.Step step = office.store().inTransaction(books -> {
                AlertLedger.Step next = ledger(books, property.name()).after(poll.alerts(), now);
                books.lastKnown().put(nameOf(property.name()), now, next.ledger());
                return next;
            });
            for (PublicAlert alert : step.fresh()) {
                fresh.put(alert.id(), alert);
                where.computeIfAbsent(alert.id(), id -> new ArrayList<>()).add(property.name());
            }
        }
        return fresh.values().stream()
                .map(alert -> new LocalAlert(alert, where.getOrDefault(alert.id(), List.of())))
                .toList();
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

    private static AlertLedger ledger(Books books, String property) {
        return books.lastKnown()
                .find(nameOf(property), AlertLedger.class)
                .orElse(AlertLedger.EMPTY);
    }

    private static String nameOf(String property) {
        return "alerts/" + property;
    }
}
