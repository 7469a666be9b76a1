package rainward.mail;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.GreenMailUtil;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rainward.brief.AlertDays;
import rainward.brief.BriefDays;
import rainward.brief.SampleCrew;
import rainward.brief.post.Letter;
import rainward.brief.post.LetterMaker;
import rainward.brief.post.Outgoing;

/** Real conversations with real servers in this JVM. */
class SmtpCourierIT {

    static final Outgoing MAIL = Mails.plain("brief/2026-07-16", "boyd@crew.example");

    @Nested
    class WithAFullServer {

        private final GreenMail server = new GreenMail(new ServerSetup[] {
            new ServerSetup(0, "localhost", ServerSetup.PROTOCOL_SMTP),
            new ServerSetup(0, "localhost", ServerSetup.PROTOCOL_SMTPS)
        });

        @BeforeEach
        void start() {
            TestTrust.install();
            server.start();
            server.setUser("crew", "crew", "rake and roll");
        }

        @AfterEach
        void stop() {
            server.stop();
        }

        @Test
        void plainSmtpDeliversByteForByte() throws Exception {
            var courier = new SmtpCourier(
                    Mails.settings(server.getSmtp().getPort(), SmtpSettings.Security.PLAIN));

            Delivery delivery = courier.deliver(MAIL);

            assertThat(delivery).isInstanceOf(Delivery.Accepted.class);
            assertArrivedUnchanged();
        }

        static Stream<Letter> everyKind() {
            LetterMaker letters = new LetterMaker(BundledLettering.read());
            return Stream.concat(
                    BriefDays.all().keySet().stream()
                            .map(day -> letters.brief(BriefDays.day(day).brief(), Mails.BOYD)
                                    .orElseThrow()),
                    AlertDays.all().values().stream()
                            .map(alert -> letters.alert(alert.get(), Mails.BOYD)));
        }

        @ParameterizedTest
        @MethodSource("everyKind")
        void everyKindOfLetterArrivesAsItWasWritten(Letter letter) {
            byte[] bytes = new MimeLetter(Mails.SENDER, SampleCrew.FARM).bytes(letter, Mails.BOYD);
            var courier = new SmtpCourier(
                    Mails.settings(server.getSmtp().getPort(), SmtpSettings.Security.PLAIN));

            Delivery delivery = courier.deliver(Mails.outgoing("any", "boyd@crew.example", bytes));

            assertThat(delivery).isInstanceOf(Delivery.Accepted.class);
            assertThat(GreenMailUtil.getWholeMessage(server.getReceivedMessages()[0]))
                    .endsWith(Mails.text(bytes).strip());
        }

        @Test
        void implicitTlsWithLoginDelivers() throws Exception {
            var settings = Mails.withLogin(
                    Mails.settings(server.getSmtps().getPort(), SmtpSettings.Security.TLS),
                    "rake and roll");

            Delivery delivery = new SmtpCourier(settings, TestTrust.client()).deliver(MAIL);

            assertThat(delivery).isInstanceOf(Delivery.Accepted.class);
            assertArrivedUnchanged();
        }

        @Test
        void startTlsWithLoginDeliversAndSaysNothingInTheClearBefore() throws Exception {
            try (var door = new StartTlsDoor(server.getSmtp().getPort(), TestTrust.context())) {
                var settings = Mails.withLogin(
                        Mails.settings(door.port(), SmtpSettings.Security.STARTTLS),
                        "rake and roll");

                Delivery delivery = new SmtpCourier(settings, TestTrust.client()).deliver(MAIL);

                assertThat(delivery).isInstanceOf(Delivery.Accepted.class);
                assertArrivedUnchanged();
                assertThat(door.saidInTheClear()).containsExactly("EHLO crew.example", "STARTTLS");
            }
        }

        @Test
        void aServerWithoutStartTlsGetsNoMail() {
            var courier = new SmtpCourier(
                    Mails.settings(server.getSmtp().getPort(), SmtpSettings.Security.STARTTLS),
                    TestTrust.client());

            Delivery delivery = courier.deliver(MAIL);

            assertThat(delivery).isInstanceOf(Delivery.Passing.class);
            assertThat(delivery.said()).containsIgnoringCase("STARTTLS");
            assertThat(server.getReceivedMessages()).isEmpty();
        }

        @Test
        void aServerThatNobodyVouchesForGetsNoMail() {
            var courier = new SmtpCourier(
                    Mails.settings(server.getSmtps().getPort(), SmtpSettings.Security.TLS));

            Delivery delivery = courier.deliver(MAIL);

            assertThat(delivery).isInstanceOf(Delivery.Passing.class);
            assertThat(server.getReceivedMessages()).isEmpty();
        }

        @Test
        void aServerOfAnotherNameGetsNoMail() {
            var settings = new SmtpSettings(
                    new SmtpSettings.Server("127.0.0.1", server.getSmtps().getPort()),
                    SmtpSettings.Security.TLS,
                    Optional.empty(),
                    Mails.SENDER,
                    Duration.ofSeconds(5));

            Delivery delivery = new SmtpCourier(settings, TestTrust.client()).deliver(MAIL);

            assertThat(delivery).isInstanceOf(Delivery.Passing.class);
            assertThat(delivery.said()).contains("127.0.0.1").doesNotContain("refused");
            assertThat(server.getReceivedMessages()).isEmpty();
        }

        @Test
        void aRefusedLoginIsNoFaultOfTheMailAndPasses() {
            var settings = Mails.withLogin(
                    Mails.settings(server.getSmtps().getPort(), SmtpSettings.Security.TLS),
                    "wrong");

            Delivery delivery = new SmtpCourier(settings, TestTrust.client()).deliver(MAIL);

            assertThat(delivery).isInstanceOf(Delivery.Passing.class);
            assertThat(delivery.said()).contains("refuses the login").doesNotContain("wrong");
        }

        private void assertArrivedUnchanged() throws MessagingException, IOException {
            MimeMessage[] received = server.getReceivedMessages();
            assertThat(received).hasSize(1);
            String whole = GreenMailUtil.getWholeMessage(received[0]);
            assertThat(whole).endsWith(Mails.text(MAIL.content()).strip());
            assertThat(received[0].getMessageID())
                    .isEqualTo(
                            new MessageId("brief/2026-07-16", "boyd@crew.example", "crew.example")
                                    .text());
        }
    }

    @Nested
    class WithABadServer {

        private ScriptedServer server;

        @BeforeEach
        void start() throws IOException {
            server = new ScriptedServer();
        }

        @AfterEach
        void stop() throws IOException {
            server.close();
        }

        private Delivery deliver(ScriptedServer.Manner manner) {
            server.behaves(manner);
            return new SmtpCourier(Mails.settings(server.port(), SmtpSettings.Security.PLAIN))
                    .deliver(MAIL);
        }

        @Test
        void goodMannersAreAccepted() {
            Delivery delivery = deliver(ScriptedServer.Manner.GOOD);

            assertThat(delivery).isEqualTo(new Delivery.Accepted("250 2.0.0 taken as 1"));
            assertThat(server.taken()).containsExactly(Mails.text(MAIL.content()));
        }

        @Test
        void greylistingPasses() {
            Delivery delivery = deliver(ScriptedServer.Manner.REFUSES_RECIPIENT_FOR_NOW);

            assertThat(delivery).isInstanceOf(Delivery.Passing.class);
            assertThat(delivery.said()).contains("451 4.7.1 greylisted");
        }

        @Test
        void aFullMailboxIsForGood() {
            Delivery delivery = deliver(ScriptedServer.Manner.MAILBOX_FULL);

            assertThat(delivery)
                    .isInstanceOfSatisfying(
                            Delivery.PermanentRefusal.class,
                            refusal -> assertThat(refusal.code()).isEqualTo(552));
            assertThat(delivery.said()).contains("mailbox full");
        }

        @Test
        void aRefusedSenderAndRefusedContentAreForGood() {
            assertThat(deliver(ScriptedServer.Manner.REFUSES_SENDER))
                    .isInstanceOfSatisfying(
                            Delivery.PermanentRefusal.class,
                            refusal -> assertThat(refusal.code()).isEqualTo(550));
            assertThat(deliver(ScriptedServer.Manner.REFUSES_CONTENT))
                    .isInstanceOfSatisfying(
                            Delivery.PermanentRefusal.class,
                            refusal -> assertThat(refusal.code()).isEqualTo(554));
        }

        @Test
        void aServerThatHangsUpInTheMiddleOfTheMailPasses() {
            assertThat(deliver(ScriptedServer.Manner.CLOSES_IN_DATA))
                    .isInstanceOf(Delivery.Passing.class);
            assertThat(server.taken()).isEmpty();
        }

        @Test
        void aServerThatHangsUpAfterItsYesHasTheMail() {
            assertThat(deliver(ScriptedServer.Manner.TAKES_AND_CLOSES_AFTER_SAYING_SO))
                    .isInstanceOf(Delivery.Accepted.class);
        }

        @Test
        void aServerThatIsBusyOrSilentPasses() {
            assertThat(deliver(ScriptedServer.Manner.BUSY)).isInstanceOf(Delivery.Passing.class);
            assertThat(deliver(ScriptedServer.Manner.NEVER_ANSWERS))
                    .isInstanceOf(Delivery.Passing.class);
        }

        @Test
        void aServerThatIsDownPasses() throws IOException {
            server.close();

            Delivery delivery = deliver(ScriptedServer.Manner.GOOD);

            assertThat(delivery).isInstanceOf(Delivery.Passing.class);
            assertThat(delivery.said()).contains("localhost");
        }
    }
}
