package rainward.input.lime;

import java.util.Optional;
import rainward.input.Gap;
import rainward.input.SoilTest;

/** A region's published lime recommendation; the person chooses one in the settings. */
public sealed interface LimeRule permits BufferIndexRule, ExchangeAcidityRule {

    /** The region it is published for. */
    String region();

    /** Method of the buffer reading it is written for. */
    String bufferMethod();

    /** Lime for a soil whose buffer was read by the method of this rule. */
    LimeNeed need(double ph, double bufferPh, double targetPh);

    /**
     * Lime that takes a soil to a target.
     *
     * @return empty where the test lacks what the rule asks for; then {@link #gap} says what
     */
    default Optional<LimeNeed> need(SoilTest test, double targetPh) {
        return test.acidity()
                .buffer()
                .filter(buffer -> buffer.method().equalsIgnoreCase(bufferMethod()))
                .map(buffer -> need(test.acidity().ph(), buffer.ph(), targetPh));
    }

    /** What the test lacks for this rule, if anything. */
    default Optional<Gap> gap(SoilTest test) {
        return need(test, test.acidity().ph()).isPresent()
                ? Optional.empty()
                : Optional.of(new Gap(
                        test.field(),
                        test.acidity()
                                .buffer()
                                .map(b -> "buffer pH was read by " + b.method() + ", the rule of "
                                        + region() + " is for " + bufferMethod())
                                .orElse("no buffer pH on the soil test"),
                        "ask the laboratory for the " + bufferMethod() + " buffer pH"));
    }
}
