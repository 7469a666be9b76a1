package rainward.store;

import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import rainward.farm.Field;
import rainward.farm.FieldCase;
import rainward.farm.FieldStatus;
import rainward.store.forecast.ChanceRecord;
import rainward.store.forecast.CopyShelf;
import rainward.store.forecast.ForecastArchive;
import rainward.store.forecast.LessonBook;
import rainward.store.forecast.PauseTable;
import rainward.store.ground.FieldBook;
import rainward.store.ground.RainBook;
import rainward.store.journal.SoilBook;
import rainward.store.journal.StageJournal;
import rainward.store.journal.StandBook;
import rainward.store.ledger.Ledger;
import rainward.store.round.BriefLog;
import rainward.store.round.JobLog;
import rainward.store.round.LastKnown;
import rainward.store.round.OutboxTable;
import rainward.store.round.PlanLog;
import rainward.store.round.WindowLog;
import rainward.weather.rain.RainOrigin;

/** All books of the store, as seen and written by one piece of work. */
public final class Books {

    private final Handle handle;

    Books(Handle handle) {
        this.handle = handle;
    }

    public FieldBook fields() {
        return new FieldBook(handle);
    }

    public StageJournal journal() {
        return new StageJournal(handle);
    }

    public SoilBook soilWords() {
        return new SoilBook(handle);
    }

    public StandBook stands() {
        return new StandBook(handle);
    }

    /** Soil tests, tags, stock, what was used, settings, checks and notes. */
    public Ledger ledger() {
        return new Ledger(handle);
    }

    public RainBook rain() {
        return new RainBook(handle);
    }

    public ForecastArchive forecasts() {
        return new ForecastArchive(handle);
    }

    public ChanceRecord chances() {
        return new ChanceRecord(handle);
    }

    public LessonBook lessons() {
        return new LessonBook(handle);
    }

    public OutboxTable outbox() {
        return new OutboxTable(handle);
    }

    public CopyShelf copies() {
        return new CopyShelf(handle);
    }

    public PauseTable pauses() {
        return new PauseTable(handle);
    }

    public PlanLog plans() {
        return new PlanLog(handle);
    }

    public WindowLog windows() {
        return new WindowLog(handle);
    }

    public BriefLog briefs() {
        return new BriefLog(handle);
    }

    public LastKnown lastKnown() {
        return new LastKnown(handle);
    }

    public JobLog jobs() {
        return new JobLog(handle);
    }

    /** Grows with every word of a person: what was done, held or seen, and what gauges held. */
    public long wordsSaid() {
        return handle.createQuery("""
                        select (select coalesce(max(id), 0) from journal)
                          + (select coalesce(max(id), 0) from rain where source = :gauge)
                        """)
                .bind("gauge", RainOrigin.GAUGE_SOURCE)
                .mapTo(Long.class)
                .one();
    }

    /** Every field with where it stands, in the order of the import. */
    public List<FieldCase> cases() {
        Map<String, FieldStatus> statuses = journal().statuses();
        return fields().all().stream().map(field -> caseOf(field, statuses)).toList();
    }

    private static FieldCase caseOf(Field field, Map<String, FieldStatus> statuses) {
        return new FieldCase(field, statuses.getOrDefault(field.name(), FieldStatus.UNTOUCHED));
    }
}
