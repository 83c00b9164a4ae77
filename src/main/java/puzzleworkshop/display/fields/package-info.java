/** What a person types, chooses or sends up: fields in the house's units, forms that remember, the button that books once. */
@org.springframework.modulith.NamedInterface("fields")
package puzzleworkshop.display.fields;
