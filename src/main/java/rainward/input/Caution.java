package rainward.input;

/**
 * Cautions of the trade that a load sheet repeats. Labels, local rules and licensed practice come
 * before all of them.
 */
public enum Caution {
    LIME_DUST("Lime dust burns eyes and lungs: goggles and a dust mask when loading and spreading,"
            + " stand upwind. The safety data sheet of the product comes first."),
    HYDRATED_LIME("Hydrated and quick lime burn skin and eyes: gloves, goggles, long sleeves, water"
            + " at hand. The label comes first."),
    SEED_CONTACT("Fertilizer that touches small seed kills it: none in the seed box or the seed"
            + " row unless the label and local advice give a rate for that crop and row width."),
    TREATED_SEED("Treated seed is poison: gloves and mask, keep it from food, feed and livestock,"
            + " cover spills, left-over seed goes the way the tag says."),
    PLANT_BACK("Some herbicides stay in the soil and kill the next crop: the plant-back interval"
            + " on the label is the law, and only the label tells it."),
    INOCULANT("Live inoculant dies in heat and sun: keep it cool, use it by the date on the bag.");

    private final String text;

    Caution(String text) {
        this.text = text;
    }

    public String text() {
        return text;
    }
}
