package rainward.mail;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rainward.brief.post.OutboxRow.State;
import rainward.brief.post.Outgoing;
import rainward.brief.post.RetrySchedule;
import rainward.mail.ScriptedServer.Manner;

/** The way from the outbox to a real server, whatever happens on it. */
class PostmanIT {

    private static final Outgoing BRIEF = Mails.plain("brief/2026-07-16", "boyd@crew.example");
    private static final Outgoing ALERT = Mails.plain("window/w1/1", "boyd@crew.example");
    private static final Outgoing FOR_ANA = Mails.plain("brief/2026-07-16", "ana@crew.example");

    private final MemoryOutbox outbox = new MemoryOutbox();
    private ScriptedServer server;

    @BeforeEach
    void start() throws IOException {
        server = new ScriptedServer();
    }

    @AfterEach
    void stop() throws IOException {
        server.close();
    }

    private int drain(Instant now) {
        var courier = new SmtpCourier(Mails.settings(server.port(), SmtpSettings.Security.PLAIN));
        return new Postman(outbox, Map.of(Outgoing.Channel.MAIL, courier), RetrySchedule.USUAL)
                .drain(() -> now);
    }

    private List<String> takenIds() {
        List<String> ids = new ArrayList<>();
        for (String mail : server.taken()) {
            Matcher id = Pattern.compile("(?m)^Message-ID: (\\S+)").matcher(mail);
            assertThat(id.find()).isTrue();
            ids.add(id.group(1));
        }
        return ids;
    }

    private static String id(Outgoing message) {
        return new MessageId(message.key().event(), message.key().recipient(), "crew.example")
                .text();
    }

    @Test
    void allThatIsDueGoesOutInTheOrderOfWriting() {
        outbox.put(BRIEF, ALERT, FOR_ANA);

        assertThat(drain(Mails.DAWN)).isEqualTo(3);

        assertThat(takenIds()).containsExactly(id(BRIEF), id(ALERT), id(FOR_ANA));
        assertThat(outbox.of(ALERT).state()).isEqualTo(State.SENT);
        assertThat(outbox.of(ALERT).lastWords()).contains("250");
    }

    @Test
    void nothingGoesOutTwice() {
        outbox.put(BRIEF).put(BRIEF);
        drain(Mails.DAWN);

        assertThat(drain(Mails.DAWN.plus(Duration.ofDays(1)))).isZero();
        assertThat(server.taken()).hasSize(1);
    }

    @Test
    void greylistedMailWaitsAndKeepsItsPlaceBeforeLaterOnes() {
        outbox.put(BRIEF, ALERT);
        server.behaves(Manner.REFUSES_RECIPIENT_FOR_NOW);
        drain(Mails.DAWN);
        server.behaves(Manner.GOOD);

        assertThat(drain(Mails.DAWN.plusSeconds(59))).isZero();
        assertThat(drain(Mails.DAWN.plusSeconds(60))).isEqualTo(2);

        assertThat(takenIds()).containsExactly(id(BRIEF), id(ALERT));
    }

    @Test
    void aFullMailboxEndsThatMailAndLetsTheNextGo() {
        outbox.put(BRIEF, FOR_ANA);
        server.behaves(Manner.MAILBOX_FULL);

        drain(Mails.DAWN);

        assertThat(outbox.of(BRIEF).state()).isEqualTo(State.REFUSED);
        assertThat(outbox.of(BRIEF).lastWords()).contains("552 5.2.2 mailbox full");
        assertThat(outbox.of(FOR_ANA).state()).isEqualTo(State.REFUSED);
    }

    @Test
    void aServerThatIsDownForHoursGetsAllOfItInOrderWhenItIsBack() throws IOException {
        outbox.put(BRIEF, ALERT, FOR_ANA);
        int port = server.port();
        server.close();
        Instant now = Mails.DAWN;
        for (; now.isBefore(Mails.DAWN.plus(Duration.ofHours(5))); now = now.plusSeconds(600)) {
            assertThat(drain(now)).isZero();
        }
        server = new ScriptedServer(port);

        assertThat(drain(now.plus(Duration.ofHours(1)))).isEqualTo(3);

        assertThat(takenIds()).containsExactly(id(BRIEF), id(ALERT), id(FOR_ANA));
    }

    @Test
    void mailOfNoMoreUseIsNotSentByAMachineThatSlept() {
        outbox.put(BRIEF);

        assertThat(drain(Mails.DAWN.plus(Duration.ofHours(30)))).isZero();

        assertThat(server.taken()).isEmpty();
        assertThat(outbox.of(BRIEF).state()).isEqualTo(State.GIVEN_UP);
        assertThat(outbox.of(BRIEF).lastWords()).contains("of no more use");
    }

    @Test
    void whatNoServerTakesInADayIsGivenUpWithItsReason() throws IOException {
        outbox.put(BRIEF);
        server.close();
        Instant end = Mails.DAWN.plus(Duration.ofHours(25));
        for (Instant now = Mails.DAWN; now.isBefore(end); now = now.plusSeconds(1800)) {
            drain(now);
        }

        assertThat(outbox.of(BRIEF).state()).isEqualTo(State.GIVEN_UP);
        assertThat(outbox.of(BRIEF).lastWords()).contains("cannot reach localhost");
        assertThat(outbox.of(BRIEF).endedAt().orElseThrow())
                .isBeforeOrEqualTo(Mails.DAWN.plus(Duration.ofHours(24)));
    }

    /** The one gap that SMTP leaves: taken, but the yes never arrived. */
    @Test
    void aYesThatIsLostMakesOneCopyThatCanBeToldByItsMessageId() {
        outbox.put(BRIEF);
        server.behaves(Manner.TAKES_AND_CLOSES_BEFORE_SAYING_SO);
        drain(Mails.DAWN);
        server.behaves(Manner.GOOD);
        drain(Mails.DAWN.plusSeconds(60));
        drain(Mails.DAWN.plusSeconds(7200));

        assertThat(server.taken()).hasSize(2);
        assertThat(server.taken().get(1)).isEqualTo(server.taken().get(0));
        assertThat(takenIds()).containsExactly(id(BRIEF), id(BRIEF));
    }

    /** The process dies between the server's yes and our record: the hold brings it back once. */
    @Test
    void aDeathBeforeTheRecordMakesAtMostOneCopy() {
        outbox.put(BRIEF, ALERT);
        var row = outbox.claim(Mails.DAWN, Postman.HOLD).orElseThrow();
        new SmtpCourier(Mails.settings(server.port(), SmtpSettings.Security.PLAIN))
                .deliver(row.message());

        assertThat(drain(Mails.DAWN.plusSeconds(30))).as("still held").isZero();
        assertThat(drain(Mails.DAWN.plus(Postman.HOLD))).isEqualTo(2);
        assertThat(drain(Mails.DAWN.plus(Duration.ofHours(5)))).isZero();

        assertThat(takenIds()).containsExactly(id(BRIEF), id(BRIEF), id(ALERT));
    }

    @Test
    void aChannelWithoutSettingsSaysSoAndKeepsTheMessage() {
        var hook = new Outgoing(
                new Outgoing.Key("brief/2026-07-16", "https://hook.example/"),
                Outgoing.Channel.WEBHOOK,
                "brief",
                new byte[] {1},
                BRIEF.times());
        outbox.put(hook);

        drain(Mails.DAWN);

        assertThat(outbox.of(hook).state()).isEqualTo(State.WAITING);
        assertThat(outbox.of(hook).lastWords()).contains("no web calls are set up");
    }
}
