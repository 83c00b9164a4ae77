package puzzleworkshop.delivery.address;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.delivery.address.CountryFormat.Part;
import puzzleworkshop.measure.OrderId;

@Repository
class AddressStore {

    private final JdbcClient jdbc;

    AddressStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<String> home() {
        return jdbc.sql("select home_country from delivery_settings")
                .query(String.class)
                .optional();
    }

    void home(String country) {
        jdbc.sql("update delivery_settings set home_country = :country")
                .param("country", country)
                .update();
    }

    /** Addresses of customers, and of orders that go elsewhere. */
    record Kept(Map<Long, PostalAddress> customers, Map<OrderId, PostalAddress> orders) {}

    Kept of(Collection<Long> customers, Collection<OrderId> orders) {
        Kept kept = new Kept(new HashMap<>(), new HashMap<>());
        jdbc.sql("select * from postal_address where customer_id = any (:customers) or order_id = any (:orders)")
                .param("customers", customers.toArray(Long[]::new))
                .param("orders", orders.stream().map(OrderId::value).toArray(Long[]::new))
                .query((row, n) -> {
                    long order = row.getLong("order_id");
                    return row.wasNull()
                            ? kept.customers().put(row.getLong("customer_id"), address(row))
                            : kept.orders().put(new OrderId(order), address(row));
                })
                .list();
        return kept;
    }

    void forCustomer(long customer, PostalAddress address) {
        write("customer_id", customer, address);
    }

    void forOrder(OrderId order, PostalAddress address) {
        write("order_id", order.value(), address);
    }

    void forget(OrderId order) {
        jdbc.sql("delete from postal_address where order_id = :id")
                .param("id", order.value())
                .update();
    }

    private void write(String whose, long id, PostalAddress address) {
        jdbc.sql("""
            insert into postal_address (%s, country, name, organisation, street, district, town, region, postal_code)
            values (:id, :country, :name, :organisation, :street, :district, :town, :region, :code)
            on conflict (%s) do update set country = excluded.country, name = excluded.name,
                organisation = excluded.organisation, street = excluded.street, district = excluded.district,
                town = excluded.town, region = excluded.region, postal_code = excluded.postal_code
            """.formatted(whose, whose))
                .param("id", id)
                .param("country", address.country())
                .param("name", address.part(Part.NAME))
                .param("organisation", address.part(Part.ORGANISATION))
                .param("street", address.part(Part.STREET))
                .param("district", address.part(Part.DISTRICT))
                .param("town", address.part(Part.TOWN))
                .param("region", address.part(Part.REGION))
                .param("code", address.part(Part.POSTAL_CODE))
                .update();
    }

    private static PostalAddress address(ResultSet row) throws SQLException {
        Map<Part, String> parts = new EnumMap<>(Part.class);
        parts.put(Part.NAME, row.getString("name"));
        parts.put(Part.ORGANISATION, row.getString("organisation"));
        parts.put(Part.STREET, row.getString("street"));
        parts.put(Part.DISTRICT, row.getString("district"));
        parts.put(Part.TOWN, row.getString("town"));
        parts.put(Part.REGION, row.getString("region"));
        parts.put(Part.POSTAL_CODE, row.getString("postal_code"));
        return new PostalAddress(row.getString("country"), parts);
    }
}
