package rainward.store.ledger;

import java.util.Arrays;
import rainward.input.PlantBack;
import rainward.input.SoilTest;
import rainward.input.record.Applied;
import rainward.input.record.BoxLook;
import rainward.input.record.Harvested;
import rainward.input.record.Note;
import rainward.input.record.TagRead;
import rainward.input.seeder.SettingRecord;
import rainward.input.stock.StockEntry;

/** What a line of the ledger may hold; the names stand on disk. */
public enum LedgerKind {
    SOIL_TEST(SoilTest.class),
    TAG(TagRead.class),
    STOCK(StockEntry.class),
    APPLIED(Applied.class),
    SETTING(SettingRecord.class),
    BOX_CHECK(BoxLook.class),
    SPRAY(PlantBack.class),
    HARVEST(Harvested.class),
    NOTE(Note.class),
    RENAME(Renamed.class),
    BOUNDARY(Bounded.class),
    /** An earlier line does not count. */
    UNDONE(Note.class);

    private final Class<?> type;

    LedgerKind(Class<?> type) {
        this.type = type;
    }

    static LedgerKind of(Object entry) {
        return Arrays.stream(values())
                .filter(kind -> kind.type.isInstance(entry))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "the ledger holds no " + entry.getClass().getSimpleName()));
    }

    static LedgerKind of(Class<?> type) {
        return Arrays.stream(values())
                .filter(kind -> kind.type.equals(type))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("the ledger holds no " + type));
    }
}
