package rainward.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import jakarta.mail.BodyPart;
import jakarta.mail.Multipart;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import rainward.brief.AlertDays;
import rainward.brief.BriefDays;
import rainward.brief.Golden;
import rainward.brief.SampleCrew;
import rainward.brief.post.Letter;
import rainward.brief.post.LetterMaker;
import rainward.brief.post.Recipient;
import rainward.farm.UnitSystem;

/** Mails as they go over the wire, and as a mail reader takes them apart again. */
class MimeLetterTest {

    private static final LetterMaker LETTERS = new LetterMaker(BundledLettering.read());

    private static final MimeLetter MIME = new MimeLetter(Mails.SENDER, SampleCrew.FARM);

    static Stream<String> days() {
        return BriefDays.all().keySet().stream();
    }

    private static Letter brief(String day) {
        return LETTERS.brief(BriefDays.day(day).brief(), Mails.BOYD).orElseThrow();
    }

    private static MimeMessage read(byte[] mail) throws Exception {
        return new MimeMessage(
                Session.getInstance(new Properties()), new ByteArrayInputStream(mail));
    }

    private static List<String> headerNames(byte[] mail) throws Exception {
        return Collections.list(read(mail).getAllHeaders()).stream()
                .map(header -> header.getName())
                .sorted()
                .toList();
    }

    /** Boundaries are random and pictures are the chart's own matter. */
    private static String settled(byte[] mail) {
        return new String(mail, StandardCharsets.US_ASCII)
                .replaceAll("----=_Part_(\\d+)_[0-9.]+", "----=_Part")
                .replaceAll(
                        "(?s)(Content-ID: <rain-\\d+>.*?\r\n\r\n).*?(?=\r\n------=_Part)",
                        "$1(picture)")
                .replace("\r\n", "\n");
    }

    @ParameterizedTest
    @MethodSource("days")
    void isWrittenAsKept(String day) {
        Golden.check("brief/" + day + ".eml", settled(MIME.bytes(brief(day), Mails.BOYD)));
    }

    /** RFC 5322 2.1.1: lines end in CRLF and hold at most 998 characters, here at most 78. */
    @ParameterizedTest
    @MethodSource("days")
    void isCleanOnTheWire(String day) {
        String mail = new String(MIME.bytes(brief(day), Mails.BOYD), StandardCharsets.ISO_8859_1);

        assertThat(mail.chars()).allMatch(c -> c < 128);
        assertThat(mail.replace("\r\n", "")).doesNotContain("\r", "\n");
        assertThat(mail.split("\r\n"))
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(78));
    }

    @Test
    void headersSayWhoWhenAndThatAMachineWroteIt() throws Exception {
        MimeMessage mail = read(MIME.bytes(brief("dry-storm-in-three-days"), Mails.BOYD));

        assertThat(mail.getFrom()[0].toString())
                .isEqualTo("Long Lake Seeding <rainward@crew.example>");
        assertThat(mail.getSubject()).isEqualTo("Thu, Jul 16: Mill 3 first, 3 fields today");
        assertThat(mail.getHeader("Date")).containsExactly("Thu, 16 Jul 2026 05:01:00 -0400");
        assertThat(mail.getHeader("Auto-Submitted")).containsExactly("auto-generated");
        assertThat(mail.getHeader("List-Id"))
                .containsExactly("Long Lake Seeding <brief.crew.example>");
        assertThat(mail.getHeader("References")).isNull();
    }

    @Test
    void theSameEventToTheSameRecipientHasTheSameMessageId() throws Exception {
        String first = read(MIME.bytes(brief("late"), Mails.BOYD)).getMessageID();
        String again =
                read(MIME.bytes(brief("dry-storm-in-three-days"), Mails.BOYD)).getMessageID();
        String other = read(MIME.bytes(brief("late"), Mails.recipient("ana@crew.example")))
                .getMessageID();

        assertThat(first).isEqualTo(again).isNotEqualTo(other);
        assertThat(first).matches("<[A-Za-z0-9.-]+@crew\\.example>");
    }

    @Test
    void laterMailsOfAWindowNameItsWholeThread() throws Exception {
        MimeMessage opened =
                read(MIME.bytes(LETTERS.alert(AlertDays.opened(), Mails.BOYD), Mails.BOYD));
        MimeMessage changed =
                read(MIME.bytes(LETTERS.alert(AlertDays.changed(), Mails.BOYD), Mails.BOYD));
        MimeMessage closed =
                read(MIME.bytes(LETTERS.alert(AlertDays.closed(), Mails.BOYD), Mails.BOYD));

        assertThat(opened.getHeader("References")).isNull();
        assertThat(changed.getHeader("References")).containsExactly(opened.getMessageID());
        assertThat(closed.getHeader("References"))
                .containsExactly(opened.getMessageID() + "\r\n " + changed.getMessageID());
        assertThat(closed.getHeader("In-Reply-To")).containsExactly(changed.getMessageID());
        assertThat(closed.getMessageID()).isNotEqualTo(opened.getMessageID());
        assertThat(closed.getSubject()).isEqualTo(opened.getSubject());
    }

    @Test
    void partsAreTextPageWithPicturesAndCalendar() throws Exception {
        MimeMessage mail = read(MIME.bytes(brief("dry-storm-in-three-days"), Mails.BOYD));

        Multipart mixed = (Multipart) mail.getContent();
        Multipart alternative = (Multipart) mixed.getBodyPart(0).getContent();
        Multipart related = (Multipart) alternative.getBodyPart(1).getContent();

        assertThat(alternative.getContentType()).startsWith("multipart/alternative");
        assertThat(alternative.getBodyPart(0).getContentType()).startsWith("text/plain");
        assertThat(related.getContentType()).startsWith("multipart/related");
        assertThat(mixed.getBodyPart(1).getContentType()).startsWith("text/calendar");
        String page = (String) related.getBodyPart(0).getContent();
        for (int i = 1; i < related.getCount(); i++) {
            BodyPart picture = related.getBodyPart(i);
            String id = picture.getHeader("Content-ID")[0].replaceAll("[<>]", "");
            assertThat(picture.getContentType()).startsWith("image/png");
            assertThat(page).contains("src=\"cid:" + id + "\"");
        }
        assertThat(related.getCount()).isEqualTo(5);
        assertThat(((String) alternative.getBodyPart(0).getContent()).replace("\r\n", "\n"))
                .isEqualTo(brief("dry-storm-in-three-days").body().text());
    }

    /** The header names of a mail full of hostile names are those of a harmless one. */
    @Test
    void noNameCanAddAHeader() throws Exception {
        byte[] hostile = MIME.bytes(brief("hostile-names"), Mails.BOYD);
        byte[] harmless = MIME.bytes(brief("dry-storm-in-three-days"), Mails.BOYD);

        assertThat(headerNames(hostile)).isEqualTo(headerNames(harmless));
        assertThat(read(hostile).getAllRecipients())
                .containsExactly(new InternetAddress("boyd@crew.example"));
        assertThat(read(hostile).getSubject())
                .isEqualTo("Thu, Jul 16: Mill\\r\\nBcc: all@example.org first, 1 field today");
    }

    @Test
    void noRecipientNameOrFarmCanAddAHeader() throws Exception {
        String evil = "Boyd\r\nBcc: all@example.org";
        Recipient recipient = new Recipient(
                evil,
                Recipient.Address.mail("boyd@crew.example"),
                Recipient.Wants.EVERYTHING,
                UnitSystem.METRIC);
        byte[] mail = new MimeLetter(
                        new SmtpSettings.Sender(evil, "rainward@crew.example"),
                        "Zoë's \"<farm>\"\r\nX: y")
                .bytes(brief("late"), recipient);

        assertThat(headerNames(mail)).doesNotContain("Bcc", "X");
        assertThat(read(mail).getAllRecipients()).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "boyd@crew.example\r\nBcc: all@example.org",
                "boyd@crew.example, all@example.org",
                "nobody",
                "a b@crew.example"
            })
    void whatIsNoMailAddressIsRefusedByName(String address) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> MIME.bytes(brief("late"), Mails.recipient(address)))
                .withMessageContaining("brief/2026-07-16");
    }

    @Test
    void theDateIsOneOfTheFarmsZoneInWinterAndSummer() throws Exception {
        Letter winter = new Letter(
                "brief/2026-11-01",
                java.util.List.of(),
                "x",
                new Letter.Written(Instant.parse("2026-11-01T10:00:00Z"), SampleCrew.DETROIT),
                Letter.Body.ofText("x"));

        assertThat(read(MIME.bytes(winter, Mails.BOYD)).getHeader("Date"))
                .containsExactly("Sun, 1 Nov 2026 05:00:00 -0500");
    }

    @Test
    void eachShareAndFormGetsItsOwn() {
        var brief = BriefDays.day("dry-storm-in-three-days").brief();
        Recipient driver = wants(Recipient.Share.OWN_MACHINES, Recipient.Form.FULL, "spreader");
        Recipient pager = wants(Recipient.Share.ALL, Recipient.Form.SHORT);
        Recipient neighbour = wants(Recipient.Share.ALERTS_ONLY, Recipient.Form.FULL);

        String own = LETTERS.brief(brief, driver).orElseThrow().body().text();
        Letter shortOne = LETTERS.brief(brief, pager).orElseThrow();

        assertThat(own).contains("spread", "Otter Flat").doesNotContain("Mill 3", "Ana");
        assertThat(shortOne.body().text()).hasSizeLessThanOrEqualTo(160);
        assertThat(shortOne.body().page()).isEmpty();
        assertThat(LETTERS.brief(brief, neighbour)).isEmpty();
        assertThat(LETTERS.alert(AlertDays.opened(), neighbour).body().page()).isPresent();
    }

    private static Recipient wants(Recipient.Share share, Recipient.Form form, String... machines) {
        return new Recipient(
                "somebody",
                Recipient.Address.mail("somebody@crew.example"),
                new Recipient.Wants(share, form, Set.copyOf(Arrays.asList(machines))),
                UnitSystem.METRIC);
    }
}
