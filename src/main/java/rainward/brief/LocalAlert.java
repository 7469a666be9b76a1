package rainward.brief;

import java.util.List;
import java.util.Set;
import rainward.weather.alert.PublicAlert;

/**
 * An alert of a public weather service and the farms it touches.
 *
 * @param alert as the service gives it
 * @param properties it touches, in order of name
 */
public record LocalAlert(PublicAlert alert, List<String> properties) {

    public LocalAlert {
        properties = properties.stream().sorted().toList();
    }

    public LocalAlert harmless() {
        PublicAlert.Message said = alert.message();
        var shown = new PublicAlert.Message(
                said.type(),
                Literal.of(said.event()),
                Literal.of(said.headline()),
                Literal.of(said.instruction()),
                Literal.of(said.area()));
        var rank = new PublicAlert.Rank(
                alert.rank().severity(),
                Literal.of(alert.rank().certainty()),
                Literal.of(alert.rank().urgency()));
        return new LocalAlert(
                new PublicAlert(alert.id(), shown, rank, alert.times(), Set.of()),
                properties.stream().map(Literal::of).toList());
    }
}
