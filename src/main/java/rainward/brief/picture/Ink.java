package rainward.brief.picture;

import java.awt.Color;

/**
 * What pictures are drawn with. Light and dark differ, not only the hue, so that they can be read
 * in black and white, by the colour-blind and turned inside out for the night.
 */
enum Ink {
    PAPER(0xFFFFFF),
    LINE(0x1C2B2E),
    FAINT(0xD5DDDD),
    RANGE(0xB4C4C7),
    CHANCE(0x6F858A),
    AMOUNT(0x14505C),
    SEED(0x1C2B2E),
    OTHER_WORK(0x5B6E72);

    private final Color color;

    Ink(int rgb) {
        this.color = new Color(rgb);
    }

    Color color() {
        return color;
    }
}
