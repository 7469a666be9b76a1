package rainward.daemon.office;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rainward.brief.Alert;
import rainward.brief.LocalAlert;
import rainward.brief.post.OutboxRow;
import rainward.brief.post.Outgoing;
import rainward.mail.Courier;
import rainward.mail.Delivery;
import rainward.weather.alert.PublicAlert;

/**
 * Public alerts on their way into and out of the outbox; Dell sleeps from nine to half past four.
 */
class PostDeskIT {

    private static final String DELL = "dell@burroak.example";
    private static final String MARNIE = "marnie@burroak.example";

    private static final Instant EVENING = Instant.parse("2026-07-15T23:00:00Z");
    private static final Instant TEN_AT_NIGHT = Instant.parse("2026-07-16T02:00:00Z");
    private static final Instant WAKING = Instant.parse("2026-07-16T08:30:00Z");

    @TempDir
    Path home;

    private final List<String> handedOver = new ArrayList<>();
    private Instant now = EVENING;
    private Office office;
    private PostDesk desk;

    @BeforeEach
    void open() throws IOException {
        String crew = Files.readString(Path.of("config", "demo.toml"))
                .replace(
                        "address = \"" + DELL + "\"",
                        "address = \"" + DELL + "\"\nquiet_from = \"21:00\"\nquiet_to = \"04:30\"");
        Path settings = Files.writeString(home.resolve("rainward.toml"), crew);
        office = Office.open(
                new HomeFolder(home), Office.settings(settings, Map.of()).settings(), () -> now);
        desk = new PostDesk(office, Map.of(Outgoing.Channel.MAIL, courier()));
    }

    @AfterEach
    void close() {
        office.close();
    }

    private Courier courier() {
        return message -> {
            handedOver.add(message.key().event() + " " + message.key().recipient());
            return new Delivery.Accepted("250 taken");
        };
    }

    private static AlertDesk.Turned turned(String chain, Alert.Step step, Instant endsAt) {
        var alert = new PublicAlert(
                chain,
                new PublicAlert.Message(
                        PublicAlert.Type.ALERT,
                        "Severe Thunderstorm Warning",
                        "Severe thunderstorm warning for Mill Pond",
                        "",
                        "Jackson"),
                new PublicAlert.Rank(PublicAlert.Severity.SEVERE, "Likely", "Expected"),
                new PublicAlert.Times(EVENING, EVENING, Optional.of(endsAt)),
                Set.of());
        return new AlertDesk.Turned(new LocalAlert(alert, List.of("Mill Pond")), step, chain);
    }

    private static AlertDesk.Turned lasting(Alert.Step step) {
        return turned("a1", step, EVENING.plus(Duration.ofDays(2)));
    }

    private List<OutboxRow> outbox() {
        return office.store().read(books -> books.outbox().since(Instant.EPOCH));
    }

    private List<OutboxRow> to(String recipient) {
        return outbox().stream()
                .filter(row -> row.message().key().recipient().equals(recipient))
                .toList();
    }

    private static String mail(OutboxRow row) {
        return new String(row.message().content(), StandardCharsets.UTF_8);
    }

    private static String header(String name, OutboxRow row) {
        String unfolded = mail(row).replaceAll("\r\n[ \t]+", " ");
        return unfolded.lines()
                .filter(line -> line.startsWith(name + ": "))
                .findFirst()
                .orElse("")
                .replace(name + ": ", "");
    }

    @Test
    void endOfAnAlertNeverToldOfIsNoNews() {
        desk.writePublic(lasting(Alert.Step.CLOSED));

        assertThat(outbox()).isEmpty();
    }

    @Test
    void firstWordIsAnIssueWhateverTheServiceCallsIt() {
        desk.writePublic(lasting(Alert.Step.CHANGED));

        assertThat(outbox()).hasSize(3);
        assertThat(mail(to(MARNIE).get(0))).contains("Severe Thunderstorm Warning from");
        assertThat(mail(to(MARNIE).get(0))).doesNotContain("Changed: Severe");
    }

    @Test
    void eachTurnGoesToEverybodyAndNamesTheWholeThread() {
        desk.writePublic(lasting(Alert.Step.OPENED));
        desk.writePublic(lasting(Alert.Step.CHANGED));
        desk.writePublic(lasting(Alert.Step.CLOSED));
        desk.writePublic(turned("a2", Alert.Step.OPENED, EVENING.plus(Duration.ofDays(2))));

        assertThat(outbox()).hasSize(12);
        List<OutboxRow> marnie = to(MARNIE);
        assertThat(marnie)
                .extracting(row -> row.message().key().event())
                .containsExactly("alert/a1/1", "alert/a1/2", "alert/a1/3", "alert/a2/1");
        String first = header("Message-ID", marnie.get(0));
        String second = header("Message-ID", marnie.get(1));
        assertThat(header("References", marnie.get(2))).isEqualTo(first + " " + second);
        assertThat(header("In-Reply-To", marnie.get(2))).isEqualTo(second);
        assertThat(header("References", marnie.get(3))).isEmpty();
    }

    @Test
    void nightHoldsTheMailOfOneWhoSleepsAndOfNobodyElse() {
        now = TEN_AT_NIGHT;
        desk.writePublic(lasting(Alert.Step.OPENED));
        desk.post();

        assertThat(handedOver)
                .containsExactlyInAnyOrder(
                        "alert/a1/1 " + MARNIE, "alert/a1/1 tobin@texts.example");
        now = WAKING.minusSeconds(1);
        desk.post();
        assertThat(handedOver).hasSize(2);
        now = WAKING;
        desk.post();
        assertThat(handedOver).hasSize(3).contains("alert/a1/1 " + DELL);
    }

    @Test
    void whatCannotWaitPassesWhatIsHeld() {
        now = TEN_AT_NIGHT;
        desk.writePublic(lasting(Alert.Step.OPENED));
        desk.writePublic(turned("a2", Alert.Step.OPENED, WAKING.minus(Duration.ofHours(3))));
        desk.post();

        assertThat(handedOver).contains("alert/a2/1 " + DELL).doesNotContain("alert/a1/1 " + DELL);
    }

    @Test
    void whatCannotWaitTakesItsOwnThreadAlongInOrder() {
        now = TEN_AT_NIGHT;
        desk.writePublic(lasting(Alert.Step.OPENED));
        desk.writePublic(turned("a1", Alert.Step.CHANGED, WAKING.minus(Duration.ofHours(3))));
        desk.post();

        assertThat(handedOver)
                .filteredOn(line -> line.endsWith(DELL))
                .containsExactly("alert/a1/1 " + DELL, "alert/a1/2 " + DELL);
    }
}
