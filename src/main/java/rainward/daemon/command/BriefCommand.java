package rainward.daemon.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Base64;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import rainward.brief.calendar.CalendarText;
import rainward.brief.calendar.WorkCalendar;
import rainward.brief.post.Letter;
import rainward.brief.post.OutboxRow;
import rainward.brief.post.Recipient;
import rainward.cycle.sheet.OrderSheet;
import rainward.daemon.office.CalendarDesk;
import rainward.daemon.office.Office;
import rainward.daemon.office.PlanningDesk;
import rainward.daemon.office.PostDesk;
import rainward.daemon.office.Refusal;
import rainward.daemon.office.WeatherDesk;
import rainward.daemon.service.Rounds;
import rainward.mail.Png;

/** Prints or sends the morning brief. */
@Command(
        name = "brief",
        description = {
            "Print the morning brief as it would go out now; nothing is sent or changed.",
            "",
            "With --send today's brief is written for everybody who gets one, unless it is, and",
            "what waits in the outbox is handed over."
        })
public final class BriefCommand extends OfficeCommand {

    @Option(names = "--send", description = "Send today's brief, once.")
    boolean send;

    @Option(names = "--text", description = "Print the plain text; so without any other choice.")
    boolean text;

    @Option(names = "--html", paramLabel = "FILE", description = "Write the page, pictures inside.")
    @Nullable
    Path html;

    @Option(names = "--eml", paramLabel = "FILE", description = "Write the whole mail.")
    @Nullable
    Path eml;

    @Option(
            names = "--ics",
            paramLabel = "FILE",
            description = "Write the calendar of the work, RFC 5545.")
    @Nullable
    Path ics;

    @Override
    protected int work(Office office) {
        PostDesk post = new PostDesk(office);
        try {
            return send ? sent(office, post) : shown(office, post);
        } catch (IOException e) {
            throw Refusal.badInput("The file cannot be written: " + e.getMessage() + ".");
        }
    }

    private int sent(Office office, PostDesk post) {
        if (office.settings().mail().server().isEmpty()) {
            throw Refusal.badInput(
                    "There is no way out for mail: add [mail] and a [[recipient]] to "
                            + place.settingsFile() + ".");
        }
        Rounds rounds = new Rounds(office, new WeatherDesk(office), post);
        Optional<PostDesk.Morning> brief = rounds.brief();
        int more = rounds.send();
        long waiting = office.store()
                .read(books -> books.outbox().in(OutboxRow.State.WAITING).size());
        out().println(
                        brief.isPresent()
                                ? "Today's brief is written."
                                : "Today's brief was written before, or its hour has not come.");
        out().println((more > 0 ? more + " more messages were taken. " : "")
                + (waiting == 0
                        ? "Nothing waits in the outbox."
                        : waiting + " messages wait in the outbox and are tried again."));
        return waiting == 0 ? 0 : Refusal.BAD_WORLD;
    }

    private int shown(Office office, PostDesk post) throws IOException {
        var result = new PlanningDesk(office).reckon();
        if (json) {
            out().println(Sheets.json(OrderSheet.of(result.outlook(), office.zone())));
            return 0;
        }
        Instant now = result.outlook().asOf();
        Recipient reader = new Recipient(
                "You",
                Recipient.Address.mail("you@localhost"),
                Recipient.Wants.EVERYTHING,
                office.settings().farm().units());
        WorkCalendar calendar = new CalendarDesk(office).with(result);
        Letter letter = post.letter(post.brief(result, now), calendar, reader).orElseThrow();
        if (html != null) {
            Files.writeString(html, page(letter));
            out().println("Written: " + html);
        }
        if (eml != null) {
            Files.write(eml, post.mail(letter, reader));
            out().println("Written: " + eml);
        }
        if (ics != null) {
            Files.writeString(ics, CalendarText.of(calendar, reader.units()));
            out().println("Written: " + ics);
        }
        if (text || (html == null && eml == null && ics == null)) {
            out().println(letter.body().text());
        }
        return 0;
    }

    /** The page as a browser shows it alone: pictures stand inside instead of beside it. */
    private static String page(Letter letter) {
        String page = letter.body().page().orElse("");
        for (Letter.Picture picture : letter.body().pictures()) {
            String data = "data:image/png;base64,"
                    + Base64.getEncoder().encodeToString(Png.bytes(picture.image()));
            page = page.replace("cid:" + picture.contentId(), data);
        }
        return page;
    }
}
