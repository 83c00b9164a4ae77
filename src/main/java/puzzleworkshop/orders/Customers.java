package puzzleworkshop.orders;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;

/** The people puzzles are made for. */
@Service
public class Customers {

    private static final RowMapper<Customer> CUSTOMER = (row, n) ->
            new Customer(row.getLong("id"), row.getString("name"), row.getString("contact"), row.getString("address"));

    private static final int LONGEST_NOTE = 4000;

    private final JdbcClient jdbc;

    Customers(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public Optional<Customer> find(long id) {
        return jdbc.sql("select * from customer where id = :id")
                .param("id", id)
                .query(CUSTOMER)
                .optional();
    }

    /** Many at once; those that do not exist are left out. */
    public List<Customer> all(Collection<Long> ids) {
        if (ids.isEmpty()) {
            return List.of();
        }
        return jdbc.sql("select * from customer where id = any (:ids)")
                .param("ids", ids.toArray(Long[]::new))
                .query(CUSTOMER)
                .list();
    }

    /** Those whose name begins with the text, or has a word that does; by name. */
    public List<Customer> search(String text, int offset, int limit) {
        String start = text.strip()
                .replace("\\", "\\\\")
                .replace("%", "\\%")
                .replace("_", "\\_")
                .toLowerCase();
        return jdbc.sql("""
            select * from customer where lower(name) like :start or lower(name) like :word
            order by lower(name), id offset :offset limit :limit
            """)
                .param("start", start + "%")
                .param("word", "% " + start + "%")
                .param("offset", offset)
                .param("limit", limit)
                .query(CUSTOMER)
                .list();
    }

    /** What the workshop wants to remember of a customer. */
    public String note(long id) {
        return jdbc.sql("select note from customer where id = :id")
                .param("id", id)
                .query(String.class)
                .optional()
                .orElse("");
    }

    /** @throws Refused when it is longer than a note */
    @Transactional
    public void keepNote(long id, String note) {
        if (note.length() > LONGEST_NOTE) {
            throw new Refused("orders.customer.long-note", LONGEST_NOTE);
        }
        jdbc.sql("update customer set note = :note where id = :id")
                .param("note", note.strip())
                .param("id", id)
                .update();
    }

    /** Keeps a newcomer or what changed about a known customer. */
    @Transactional
    public Customer keep(Customer customer) {
        if (customer.name().isBlank()) {
            throw new Refused("orders.customer.no-name");
        }
        if (!customer.isKept()) {
            return jdbc.sql("insert into customer (name, contact, address) values (:name, :contact, :address)"
                            + " returning *")
                    .param("name", customer.name())
                    .param("contact", customer.contact())
                    .param("address", customer.address())
                    .query(CUSTOMER)
                    .single();
        }
        jdbc.sql("update customer set name = :name, contact = :contact, address = :address where id = :id")
                .param("name", customer.name())
                .param("contact", customer.contact())
                .param("address", customer.address())
                .param("id", customer.id())
                .update();
        return customer;
    }
}
