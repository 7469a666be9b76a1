package rainward.brief.post;

import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import rainward.farm.Require;
import rainward.farm.UnitSystem;
import rainward.window.QuietHours;

/**
 * Somebody who gets mail.
 *
 * @param name what the crew calls them
 * @param address where it goes
 * @param wants what they get
 * @param units they read
 * @param quiet when mail waits for them
 */
public record Recipient(String name, Address address, Wants wants, UnitSystem units, Quiet quiet) {

    /** Somebody who gets mail at any hour. */
    public Recipient(String name, Address address, Wants wants, UnitSystem units) {
        this(name, address, wants, units, Quiet.NEVER);
    }

    public Recipient {
        Require.named("recipient", name);
    }

    /**
     * Where it goes.
     *
     * @param channel the way out
     * @param where mail address, or the web address of the hook
     */
    public record Address(Outgoing.Channel channel, String where) {

        public Address {
            Require.named("address", where);
        }

        public static Address mail(String where) {
            return new Address(Outgoing.Channel.MAIL, where);
        }

        public static Address webhook(String where) {
            return new Address(Outgoing.Channel.WEBHOOK, where);
        }
    }

    /** How much of the brief somebody gets. */
    public enum Share {
        /** The whole brief, and alerts. */
        ALL,
        /** Only the lines of their own machines, and alerts. */
        OWN_MACHINES,
        /** No brief. */
        ALERTS_ONLY
    }

    /** How it is written. */
    public enum Form {
        /** A mail with text, page, pictures and calendar. */
        FULL,
        /** At most 160 characters for a gateway to text messages. */
        SHORT
    }

    /**
     * When mail waits.
     *
     * @param hours of the farm's day
     * @param notice quiet is broken for what is of no use any more so soon after its end
     */
    public record Quiet(QuietHours hours, Duration notice) {

        /** Mail at any hour. */
        public static final Quiet NEVER = new Quiet(QuietHours.NEVER, Duration.ZERO);

        /** When a letter goes out: when it is written, or when the quiet then ends. */
        public Instant sendFrom(Letter.Written written) {
            return hours.endAt(written.at().atZone(written.zone()))
                    .filter(end -> written.usefulUntil()
                            .map(until -> until.isAfter(end.plus(notice)))
                            .orElse(true))
                    .orElse(written.at());
        }
    }

    /**
     * What somebody gets.
     *
     * @param share how much of the brief
     * @param form how it is written
     * @param machines theirs; read for {@code OWN_MACHINES} only
     */
    public record Wants(Share share, Form form, Set<String> machines) {

        /** The whole brief and all alerts, in full. */
        public static final Wants EVERYTHING = new Wants(Share.ALL, Form.FULL, Set.of());

        public Wants {
            machines = Set.copyOf(machines);
            Require.that(
                    share != Share.OWN_MACHINES || !machines.isEmpty(),
                    "somebody who gets only the lines of their machines needs at least one");
        }

        public boolean brief() {
            return share != Share.ALERTS_ONLY;
        }
    }
}
