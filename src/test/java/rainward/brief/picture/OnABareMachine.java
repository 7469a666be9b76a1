package rainward.brief.picture;

import java.awt.image.BufferedImage;
import java.util.Arrays;
import rainward.brief.BriefDays;
import rainward.brief.SampleCrew;
import rainward.farm.UnitSystem;

/** Draws a picture and prints a number that tells it from others; run in a process of its own. */
final class OnABareMachine {

    private OnABareMachine() {}

    public static void main(String[] args) {
        System.out.println(fingerprint());
    }

    static String fingerprint() {
        BufferedImage image = RainChart.draw(
                BriefDays.dryStormInThreeDays().brief().sky().rain().get(0),
                SampleCrew.DETROIT,
                UnitSystem.US_CUSTOMARY,
                Letters.kept());
        int[] dots =
                image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        return Integer.toHexString(Arrays.hashCode(dots));
    }
}
