package org.fusewright.catalogs.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

import org.fusewright.catalogs.PartKind;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.Part;
import org.fusewright.core.catalog.PartNumber;
import org.hibernate.annotations.ColumnTransformer;

@Entity
@Table(name = "part")
class PartRow {

    @Id String number;
    String kind;
    String title;
    String brand;

    @Column(name = "mass_g")
    double massG;

    // As text: the conversion is ours, strict, and independent of the mapper that Hibernate finds.
    @Column(columnDefinition = "jsonb")
    @ColumnTransformer(write = "?::jsonb")
    String attributes;

    protected PartRow() {}

    PartRow(Part part) {
        number = part.number().value();
        kind = PartKind.of(part).code();
        title = part.title();
        brand = part.brand();
        massG = part.massG();
        attributes = PartAttributes.write(part);
    }

    Part toPart() {
        PartKind known =
                PartKind.parse(kind)
                        .orElseThrow(() -> new IllegalStateException("unknown kind " + kind));
        Item item = new Item(new PartNumber(number), title, brand, massG);
        return PartAttributes.read(known, item, attributes);
    }
}
