package rainward.stand.model;

import rainward.farm.Mix;
import rainward.farm.MixComponent;
import rainward.farm.SeedingMethod;
import rainward.stand.SeedPlacement;
import rainward.stand.StandCase;
import rainward.stand.StandRules;

/**
 * What one kind of seed counts for in its mix. The stand of a mix is the sum over components of
 * weight x plants over drilled seed; so a heavier rate for broadcast seed makes up for what does
 * not find soil.
 *
 * @param plantShare stand that all seed of it would make where none is lost
 * @param weight of its losses, the components together 1
 */
public record ComponentShare(double plantShare, double weight) {

    public static ComponentShare of(StandCase question, MixComponent component, StandRules rules) {
        SeedingMethod method = question.conditions().method();
        double weight = component.standWeight() / totalWeight(question.mix());
        double plants = weight
                * component.rateKgPerHa(method)
                / component.drilledKgPerHa()
                * SeedPlacement.placedFraction(method)
                * component.species().germinableFraction()
                * rules.fieldFraction();
        return new ComponentShare(plants, weight);
    }

    private static double totalWeight(Mix mix) {
        return mix.components().stream().mapToDouble(MixComponent::standWeight).sum();
    }
}
