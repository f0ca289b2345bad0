package org.fusewright.catalogs;

/** Who sells parts to the shop; offers name it by its code. */
public record Supplier(String code, String title) {}
