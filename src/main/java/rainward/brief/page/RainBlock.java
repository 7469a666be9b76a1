package rainward.brief.page;

import java.util.ArrayList;
import java.util.List;
import rainward.brief.RainPanel;
import rainward.brief.picture.RainChart;
import rainward.brief.words.SkyWords;

/** The rain of all farms on a page: a picture each where there is something to see, else a line. */
final class RainBlock {

    /** Between two pictures. */
    private static final int GAP = 6;

    private final SkyWords sky;
    private final Pictures pictures;

    RainBlock(SkyWords sky, Pictures pictures) {
        this.sky = sky;
        this.pictures = pictures;
    }

    List<Element> of(List<RainPanel> panels) {
        Element drawn = Element.of("div").style("font-size:0;");
        List<RainPanel> told = new ArrayList<>();
        for (int i = 0; i < panels.size(); i++) {
            RainPanel panel = panels.get(i);
            if (panel.isWorthAPicture()) {
                drawn.add(picture(i, panel));
            } else {
                told.add(panel);
            }
        }
        List<Element> block = new ArrayList<>();
        if (told.size() < panels.size()) {
            block.add(drawn);
            block.add(HtmlFrame.quiet(
                    "Work in the pictures: solid is seeding, striped is all other work."));
        }
        if (!told.isEmpty()) {
            block.add(HtmlFrame.list(sky.rain(told).stream()
                    .map(rain -> rain.properties() + ": " + rain.words())
                    .toList()));
        }
        return block;
    }

    /** Stands beside the next one where there is room for two. */
    private Element picture(int number, RainPanel panel) {
        String words = sky.rain(panel);
        // By day's colours also at night: the night turns the whole picture over, and with it the
        // words that stand in for one that the mail client does not show.
        Element image = Element.of("img")
                .attribute("src", pictures.source(number, panel))
                .attribute("width", String.valueOf(RainChart.WIDTH))
                .attribute("height", String.valueOf(RainChart.HEIGHT))
                .attribute("class", "picture")
                .attribute("alt", panel.property() + ": " + words)
                .style(Palette.PAGE.css() + "display:block;width:100%;max-width:" + RainChart.WIDTH
                        + "px;height:auto;border:0;");
        return Element.of("div")
                .style("display:inline-block;width:100%;max-width:" + (RainChart.WIDTH + GAP)
                        + "px;padding:0 " + GAP + "px 12px 0;box-sizing:border-box;"
                        + "vertical-align:top;" + HtmlFrame.FONT)
                .add(Element.of("strong").text(panel.property()))
                .add(image)
                .add(Element.of("span").ink(Palette.QUIET, "font-size:14px;").text(words));
    }
}
