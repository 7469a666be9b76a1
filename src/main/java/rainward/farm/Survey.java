package rainward.farm;

import java.util.List;

/**
 * Fields and properties as one file tells them.
 *
 * @param gates properties whose place of arrival the file states
 * @param middles properties whose place is only known from their fields: the middle of them
 * @param fields in the order of the file
 */
public record Survey(List<Property> gates, List<Property> middles, List<MappedField> fields) {

    public Survey {
        gates = List.copyOf(gates);
        middles = List.copyOf(middles);
        fields = List.copyOf(fields);
    }
}
