/**
 * Drinks that are not milk, one a line; `foodTable.ts` says what the columns are. A seventh number is alcohol, by mass.
 *
 * @source usda-sr-legacy, ashrae-refrigeration, fsis-food-safety, from-memory
 */
export const drinks: string = `
orange juice | Orange juice | juice, fruit juice, apple juice, juice boxes, grape juice, cranberry juice, smoothie, smoothies | 88 1 0 10 0.2 0.4 | -0.4 | drink chilled | keep | 7 | | 70 lump | usda-sr-legacy
soft drink | Cola | cola, soda, soda pop, pop, soft drinks, cans, canned drinks, lemon lime soda, root beer, ginger ale, tonic water, energy drink | 90 0 0 11 0 0.1 | ~-0.2 | drink ambient | keep | - | freezes badly | 66 cylinder | usda-sr-legacy
sparkling water | Water, sparkling | seltzer, seltzer water, soda water, club soda, fizzy water, mineral water, diet soda | 100 0 0 0 0 0 | ~-0.2 | drink ambient | keep | - | freezes badly | 66 cylinder | from-memory
beer | Beer | beers, ale, lager, stout, cider, hard seltzer, hard cider, ready mixed cocktail | 92 0 0 4 0 0.2 3.8 | ~-2.2 | drink ambient | keep | - | freezes badly | 66 cylinder | usda-sr-legacy
wine | Wine, table | red wine, white wine, rose wine, sparkling wine, boxed wine, sangria | 87 0 0 3 0 0.2 9.8 | ~-5.0 | drink ambient | keep | - | freezes badly | 75 cylinder | usda-sr-legacy
spirits | Spirits, 40 % by volume | liquor, whiskey, vodka, rum, gin, tequila | 66.6 0 0 0 0 0 33.4 | ~-27.0 | drink ambient | keep | - | | 75 cylinder | from-memory
water | Drinking water | drinking water, bottled water, bottles of water, water bottles, tap water | 100 0 0 0 0 0 | -0.0 | drink ambient | keep | - | | 65 cylinder | usda-sr-legacy
iced tea | Iced tea, sweetened | tea, sports drink, sports drinks, lemonade, electrolyte drink, fruit punch, sweet tea | 93 0 0 7 0 0.1 | ~-0.5 | drink ambient | keep | - | | 65 cylinder | from-memory
coffee | Coffee, black | iced coffee, cold brew, black coffee, unsweetened tea | 99.3 0.1 0 0.4 0 0.2 | ~-0.1 | drink ambient | keep | - | | 65 cylinder | from-memory
`;
