package rainward.daemon.yard.paper;

import com.lowagie.text.Chunk;
import com.lowagie.text.Document;
import com.lowagie.text.DocumentException;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.FontFactory;
import com.lowagie.text.PageSize;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.ColumnText;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfWriter;

import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;
import java.util.List;

/** A printed paper on letter-size pages, built from the top down. */
public final class Paper {

    private static final float MARGIN_PT = 42;
    private static final Color RULE = new Color(0x8a, 0x8f, 0x86);
    private static final Color SHADE = new Color(0xee, 0xf0, 0xea);
    private static final Charset PRINTABLE = Charset.forName("windows-1252");

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final Document document =
            new Document(PageSize.LETTER, MARGIN_PT, MARGIN_PT, MARGIN_PT, MARGIN_PT);
    private final PdfWriter writer;

    /**
     * Begins a paper.
     *
     * @param title for the reader's window
     * @param made when, as the file tells
     */
    public Paper(String title, ZonedDateTime made) {
        try {
            writer = PdfWriter.getInstance(document, bytes);
        } catch (DocumentException e) {
            throw new IllegalStateException("a paper cannot be begun", e);
        }
        writer.setPageEvent(new PageFoot(title));
        writer.getInfo()
                .put(
                        com.lowagie.text.pdf.PdfName.CREATIONDATE,
                        new com.lowagie.text.pdf.PdfDate(GregorianCalendar.from(made)));
        document.addTitle(printable(title));
        document.open();
    }

    /** The writer, for drawings on the open page. */
    PdfWriter writer() {
        return writer;
    }

    /** Room that is left on the page above its foot [pt]. */
    float roomPt() {
        return writer.getVerticalPosition(false) - document.bottom();
    }

    /** Letters of the built-in fonts; one that they lack becomes a question mark. */
    static String printable(String text) {
        CharsetEncoder encoder = PRINTABLE.newEncoder();
        StringBuilder out = new StringBuilder();
        text.codePoints().forEach(c -> {
            String one = Character.toString(c);
            out.append(encoder.canEncode(one) ? one : "?");
        });
        return out.toString();
    }

    private static Font font(float sizePt, boolean bold) {
        return FontFactory.getFont(
                bold ? FontFactory.HELVETICA_BOLD : FontFactory.HELVETICA,
                BaseFont.WINANSI,
                sizePt);
    }

    public Paper title(String text) {
        return paragraph(text, font(17, true), 2);
    }

    public Paper heading(String text) {
        keepTogether(60);
        return paragraph(text, font(12, true), 3, 10);
    }

    public Paper text(String text) {
        return paragraph(text, font(9.5f, false), 3);
    }

    public Paper small(String text) {
        return paragraph(text, font(8, false), 2);
    }

    private Paper paragraph(String text, Font font, float afterPt) {
        return paragraph(text, font, afterPt, 0);
    }

    private Paper paragraph(String text, Font font, float afterPt, float beforePt) {
        Paragraph paragraph = new Paragraph(new Chunk(printable(text), font));
        paragraph.setLeading(font.getSize() * 1.25f);
        paragraph.setSpacingAfter(afterPt);
        paragraph.setSpacingBefore(beforePt);
        return add(paragraph);
    }

    /** Begins a new page where less than this is left on the open one. */
    Paper keepTogether(float pt) {
        if (roomPt() < pt) {
            document.newPage();
        }
        return this;
    }

    /** Leaves room for a drawing and gives its lower edge [pt]. */
    float drawingFloor(float heightPt) {
        keepTogether(heightPt + 10);
        float floorPt = writer.getVerticalPosition(false) - heightPt - 4;
        PdfPTable room = new PdfPTable(1);
        room.setWidthPercentage(100);
        PdfPCell cell = new PdfPCell(new Phrase(" "));
        cell.setFixedHeight(heightPt + 4);
        cell.setBorder(PdfPCell.NO_BORDER);
        room.addCell(cell);
        add(room);
        return floorPt;
    }

    float leftPt() {
        return document.left();
    }

    float widthPt() {
        return document.right() - document.left();
    }

    /**
     * A table whose head comes again on every page.
     *
     * @param widths of the columns against each other
     * @param head of the columns
     * @param rows each as long as the head
     */
    public Paper table(float[] widths, List<String> head, List<List<String>> rows) {
        PdfPTable table = new PdfPTable(widths);
        table.setWidthPercentage(100);
        table.setSpacingBefore(2);
        table.setSpacingAfter(6);
        table.setHeaderRows(1);
        head.forEach(text -> table.addCell(cell(text, true)));
        rows.forEach(row -> row.forEach(text -> table.addCell(cell(text, false))));
        return add(table);
    }

    private static PdfPCell cell(String text, boolean head) {
        PdfPCell cell = new PdfPCell(new Phrase(printable(text), font(8.5f, head)));
        cell.setBorder(PdfPCell.BOTTOM);
        cell.setBorderColor(RULE);
        cell.setBorderWidth(0.4f);
        cell.setPadding(2.5f);
        cell.setPaddingLeft(0);
        cell.setPaddingRight(5);
        cell.setVerticalAlignment(Element.ALIGN_TOP);
        if (head) {
            cell.setBackgroundColor(SHADE);
            cell.setPaddingLeft(1);
        }
        return cell;
    }

    private Paper add(Element element) {
        try {
            document.add(element);
            return this;
        } catch (DocumentException e) {
            throw new IllegalStateException("a paper cannot be written on", e);
        }
    }

    /** The file. */
    public byte[] bytes() {
        document.close();
        return bytes.toByteArray();
    }

    /** Title and number at the foot of each page. */
    private static final class PageFoot extends PdfPageEventHelper {

        private final String title;

        PageFoot(String title) {
            this.title = title;
        }

        @Override
        public void onEndPage(PdfWriter writer, Document document) {
            ColumnText.showTextAligned(
                    writer.getDirectContent(),
                    Element.ALIGN_LEFT,
                    new Phrase(printable(title), font(7.5f, false)),
                    document.left(),
                    24,
                    0);
            ColumnText.showTextAligned(
                    writer.getDirectContent(),
                    Element.ALIGN_RIGHT,
                    new Phrase("page " + writer.getPageNumber(), font(7.5f, false)),
                    document.right(),
                    24,
                    0);
        }
    }
}
