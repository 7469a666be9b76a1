package rainward.input;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import rainward.farm.Require;

/**
 * A spray before seeding, with the interval that its label asks for before this crop.
 *
 * @param product as on the label
 * @param crop that is to be sown
 * @param sprayedOn day of the spray
 * @param labelDays plant-back interval read from the label for this crop [d]; empty where nobody
 *     has read it, and nobody guesses it
 */
public record PlantBack(String product, String crop, LocalDate sprayedOn, OptionalInt labelDays) {

    public PlantBack {
        Require.named("product", product);
        Require.named("crop", crop);
        labelDays.ifPresent(days -> Require.inRange("label plant-back days", days, 0, 1_500));
    }

    /** First day that seed may go in; empty without the label's interval. */
    public Optional<LocalDate> firstSowing() {
        return labelDays.isPresent()
                ? Optional.of(sprayedOn.plusDays(labelDays.getAsInt()))
                : Optional.empty();
    }

    /** Why seed may not go in on a day, if so. */
    public Optional<Gap> stops(LocalDate day) {
        if (labelDays.isEmpty()) {
            return Optional.of(new Gap(
                    product,
                    "plant-back interval for " + crop + " is not known",
                    "read it from the label of the product; without it " + crop
                            + " is not sown there"));
        }
        LocalDate first = sprayedOn.plusDays(labelDays.getAsInt());
        return day.isBefore(first)
                ? Optional.of(new Gap(
                        product,
                        "label asks for " + labelDays.getAsInt() + " days before " + crop,
                        "sow it from " + first + " on, or another crop"))
                : Optional.empty();
    }
}
