/** Everything that is printed for a parcel: labels, slips, cards, customs data. */
@org.springframework.modulith.NamedInterface("labels")
package puzzleworkshop.delivery.labels;
