package rainward.brief;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import rainward.cycle.Outlook;
import rainward.cycle.RainPicture;
import rainward.farm.Field;
import rainward.readiness.Figures;
import rainward.soil.property.SaxtonRawls;
import rainward.stand.StandOutlook;

/**
 * What is ahead of one field: rain, water where the seed lies, and the chance of a stand.
 *
 * @param field its name
 * @param rain six hours each, in order of time; not empty
 * @param water at seed depth
 * @param marks between which water is of use to seed
 * @param stands chance by seeding hour, one a mix, the one that is told of first; not empty
 * @param nextSeedAt the next possible hour of seeding
 */
public record FieldPanel(
        String field,
        List<RainPicture.Bar> rain,
        Figures.Course water,
        WaterMarks marks,
        List<StandOutlook> stands,
        Instant nextSeedAt) {

    public FieldPanel {
        rain = List.copyOf(rain);
        stands = List.copyOf(stands);
    }

    /**
     * Waters of the field's texture by Saxton and Rawls 2006.
     *
     * @param wiltingFraction at 1500 kPa [m3/m3]
     * @param fieldCapacityFraction at 33 kPa [m3/m3]
     */
    public record WaterMarks(double wiltingFraction, double fieldCapacityFraction) {

        static WaterMarks of(Field.Ground ground) {
            SaxtonRawls soil = SaxtonRawls.of(ground.texture());
            return new WaterMarks(soil.waterFractionAt(1500), soil.waterFractionAt(33));
        }
    }

    /** The mix that the field's readiness is told for comes first. */
    private static List<StandOutlook> inOrder(List<StandOutlook> stands, String told) {
        return stands.stream()
                .sorted(Comparator.comparing(stand -> !stand.mix().equals(told)))
                .toList();
    }

    /** The panel of a field; empty where it was not reckoned. */
    public static Optional<FieldPanel> of(Outlook outlook, String name) {
        return outlook.field(name)
                .flatMap(field -> field.readiness()
                        .figures()
                        .flatMap(figures -> Optional.ofNullable(
                                        outlook.rain().get(field.item().field().property()))
                                .map(rain -> new FieldPanel(
                                        name,
                                        rain.bars(),
                                        figures.seedbed().course(),
                                        WaterMarks.of(field.item().field().ground()),
                                        inOrder(
                                                field.stands(),
                                                figures.stand().outlook().mix()),
                                        figures.nextSeedAt()))));
    }
}
