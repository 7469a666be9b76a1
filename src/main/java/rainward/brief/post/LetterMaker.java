package rainward.brief.post;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import rainward.brief.Alert;
import rainward.brief.Brief;
import rainward.brief.RainPanel;
import rainward.brief.calendar.CalendarText;
import rainward.brief.calendar.WorkCalendar;
import rainward.brief.page.AlertHtml;
import rainward.brief.page.BriefHtml;
import rainward.brief.picture.Lettering;
import rainward.brief.picture.RainChart;
import rainward.brief.plain.AlertText;
import rainward.brief.plain.BriefText;
import rainward.brief.plain.ShortForm;

/** Writes to each recipient what they want, the way they want it. */
public final class LetterMaker {

    private final Lettering lettering;

    public LetterMaker(Lettering lettering) {
        this.lettering = lettering;
    }

    /** Key of the brief of a day: one brief a day, however often it is made. */
    public static String eventOf(LocalDate day) {
        return "brief/" + day;
    }

    /** The first brief of all, whose calendar nobody has; else as below. */
    public Optional<Letter> brief(Brief brief, Recipient recipient) {
        var at = brief.heading().written().at();
        return brief(brief, WorkCalendar.EMPTY.after(brief.orders(), at), recipient);
    }

    /** The brief with the calendar as it is now; empty for somebody who gets alerts only. */
    public Optional<Letter> brief(Brief brief, WorkCalendar calendar, Recipient recipient) {
        if (!recipient.wants().brief()) {
            return Optional.empty();
        }
        boolean own = recipient.wants().share() == Recipient.Share.OWN_MACHINES;
        Brief theirs = own ? OwnLines.of(brief, recipient.wants().machines()) : brief;
        WorkCalendar work = own ? calendar.of(recipient.wants().machines()) : calendar;
        var written = new Letter.Written(
                brief.heading().written().at(), brief.heading().zone());
        return Optional.of(new Letter(
                eventOf(brief.heading().day()),
                List.of(),
                BriefText.subject(theirs, recipient.units()),
                written,
                body(theirs, work, recipient)));
    }

    private Letter.Body body(Brief brief, WorkCalendar work, Recipient recipient) {
        var units = recipient.units();
        if (recipient.wants().form() == Recipient.Form.SHORT) {
            return Letter.Body.ofText(ShortForm.of(brief, units));
        }
        return new Letter.Body(
                BriefText.of(brief, units),
                Optional.of(BriefHtml.of(brief, units, (number, panel) -> "cid:" + id(number))),
                pictures(brief, recipient),
                work.events().isEmpty()
                        ? Optional.empty()
                        : Optional.of(CalendarText.of(work, units)),
                Lines.of(brief));
    }

    private List<Letter.Picture> pictures(Brief brief, Recipient recipient) {
        List<Letter.Picture> pictures = new ArrayList<>();
        for (int i = 0; i < brief.sky().rain().size(); i++) {
            RainPanel panel = brief.sky().rain().get(i);
            if (panel.isWorthAPicture()) {
                pictures.add(new Letter.Picture(
                        id(i),
                        RainChart.draw(
                                panel, brief.heading().zone(), recipient.units(), lettering)));
            }
        }
        return pictures;
    }

    private static String id(int number) {
        return "rain-" + number;
    }

    /** An alert; everybody gets these. */
    public Letter alert(Alert alert, Recipient recipient) {
        var units = recipient.units();
        String thread = alert.news().thread();
        boolean brief = recipient.wants().form() == Recipient.Form.SHORT;
        return new Letter(
                thread + "/" + alert.news().number(),
                IntStream.range(1, alert.news().number())
                        .mapToObj(number -> thread + "/" + number)
                        .toList(),
                AlertText.subject(alert, units),
                new Letter.Written(
                        alert.origin().at(), alert.origin().zone(), alert.news().usefulUntil()),
                brief
                        ? Letter.Body.ofText(ShortForm.of(alert, units))
                        : new Letter.Body(
                                AlertText.of(alert, units),
                                Optional.of(AlertHtml.of(alert, units)),
                                List.of(),
                                Optional.empty(),
                                Lines.of(alert)));
    }
}
