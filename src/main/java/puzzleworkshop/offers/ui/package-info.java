@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.offers.ui;
