package rainward.board.house;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.brief.post.OutboxRow;
import rainward.input.load.LoadSheet;

/** What the board shows. Every answer is a value that does not change any more. */
public interface House {

    /** The moment, by the clock of the service. */
    Instant now();

    /** How things stand; cheap to ask. */
    Standing standing();

    /** What is recorded about a field, if there is one of that name. */
    Optional<FieldFile> file(String field);

    /** Boundaries as they were imported, GeoJSON geometry by field. */
    Map<String, String> boundaries();

    /** What goes on the trucks today. */
    LoadSheet loads();

    /** What is in the shed, under the order in force. */
    List<Supply> shed();

    /** The settings file as it is, where it lies in the data folder. */
    Optional<String> settings();

    /** What of the settings can be changed by form, by kind. */
    List<Entry.Group> entries();

    /** The form of one entry, or of a new one where no name is given. */
    Optional<Entry> entry(String kind, Optional<String> name);

    /** Mail that waits, and that of the last week. */
    List<OutboxRow> outbox();

    /** Gauges read lately, the newest first. */
    List<Gauge> gauges();

    /** How good forecasts and chances were, a line each. */
    List<String> skill();

    /** What was looked at in the service itself, and how it stands. */
    List<Mark> health();

    /** Results that the commands print with {@code --json}, by the name of the command. */
    List<Sheet> sheets();

    /**
     * The work of the days ahead as an iCalendar file (RFC 5545), if an order is there.
     *
     * @param person whose work alone it holds; empty: everybody's
     */
    Optional<String> calendar(Optional<String> person);

    /** Names that people on this machine may say they are. */
    List<String> names();

    /** Calls back whenever something that is shown has changed. */
    void whenChanged(Runnable told);
}
