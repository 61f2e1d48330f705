/**
 * Food that is eaten as it is or only warmed: cooked, cured, sauces, bread and dry goods, one food a line;
 * `foodTable.ts` says what the columns are.
 *
 * @source usda-sr-legacy, ashrae-refrigeration, fsis-food-safety, from-memory
 */
export const readyFoods: string = `
hot dog | Frankfurter, beef | hot dogs, frankfurter, franks, wieners, bologna, smoked sausage, kielbasa, cooked sausage, mortadella | 54 11 28 3 0 3.2 | -1.7 | rte chilled | discard | 7 (opened) 14 (unopened) | | 25 cylinder | usda-sr-legacy
ham | Ham, sliced, regular | sliced ham, cooked ham, ham slices, prosciutto, canned ham | 67 17 9 4 1.3 3.7 | ~-2.0 | rte chilled | discard | 3-5 | | 25 slab | usda-sr-legacy
deli meat | Turkey breast, deli sliced | deli turkey, lunch meat, luncheon meat, cold cuts, sliced turkey, sliced chicken, pastrami, corned beef, roast beef sliced, deli roast beef | 74 17 2 4 0.5 3.0 | ~-1.7 | rte chilled | discard | 3-5 | | 25 slab | usda-sr-legacy
salami | Salami, dry or hard, pork and beef | hard salami, pepperoni, summer sausage, dry sausage, dried beef, jerky, meat sticks, cured chorizo, soppressata | 41 21 32 1 0 5.4 | ~-8.0 | rte chilled | discard | 14-21 | | 40 cylinder | usda-sr-legacy
cooked meat | Chicken, roasted, meat only | cooked chicken, roast chicken, rotisserie chicken, leftovers, leftover meat, cooked beef, pulled pork, cooked pork, carnitas, barbacoa, taco meat, cooked ground beef, cooked turkey, meatballs, meatloaf, cooked fish, gravy | 64 28 7 0 0 1.1 | ~-1.5 | rte chilled | discard | 3-4 | | 30 slab | from-memory
smoked fish | Salmon, cold smoked | smoked salmon, lox, gravlax, smoked trout | 72 18 4 0 0 5.5 | ~-4.0 | rte chilled | discard | 7 (opened) | | 15 slab | from-memory
tuna salad | Tuna salad | chicken salad, egg salad, shrimp salad, ham salad, opened canned tuna, canned tuna, canned fish, canned meat | 63 16 9 9 0 2.0 | ~-2.0 | rte chilled | discard | 3-5 | freezes badly | 50 lump | from-memory
hard boiled egg | Egg, hard-boiled | hard-boiled eggs, boiled eggs, deviled eggs, cooked eggs | 75 13 11 1 0 1.1 | ~-0.6 | rte chilled | discard | 7 | freezes badly | 44 lump | usda-sr-legacy
tofu | Tofu, firm | tempeh, seitan, bean curd, veggie burgers, meat substitute, soy meat, plant-based burger | 85 8 4 2 0.9 1.0 | ~-0.6 | rte chilled | discard | 3-5 | | 40 slab | usda-sr-legacy
hummus | Hummus, commercial | dip, bean dip, guacamole, spinach dip, tzatziki, baba ganoush | 67 8 10 14 6.0 1.7 | ~-2.0 | rte chilled | discard | 7 | | 50 lump | usda-sr-legacy
rice | Rice, white, cooked | cooked rice, fried rice, quinoa, couscous, cooked grains, oatmeal, porridge, polenta, grits, risotto | 68 3 0 28 0.4 0.4 | ~-1.0 | rte chilled | discard | 3-4 | | 40 slab | usda-sr-legacy
pasta | Pasta, cooked | cooked pasta, noodles, spaghetti, ramen, fresh pasta, gnocchi, ravioli, tortellini, dumplings | 62 6 1 31 1.8 0.3 | ~-1.0 | rte chilled | discard | 3-4 | | 40 slab | usda-sr-legacy
beans | Black beans, cooked | black beans, cooked beans, refried beans, baked beans, pinto beans, kidney beans, lentils, chickpeas, dal | 66 9 1 24 8.7 1.1 | ~-1.5 | rte chilled | discard | 3-4 | | 40 slab | usda-sr-legacy
chili | Chili with beans, home made or from an opened can | stew, beef stew, curry, chili con carne, goulash, gumbo, ragout, bolognese, meat sauce, tagine, jambalaya, ratatouille, sloppy joe | 76 6 5 12 4.4 1.4 | ~-1.0 | rte chilled | discard | 3-4 | | 30 slab | usda-sr-legacy
soup | Chicken soup, chunky | chicken soup, broth, stock, chowder, vegetable soup, noodle soup, bisque, bone broth | 84 5 3 7 0.6 1.3 | ~-0.8 | rte chilled | discard | 3-4 | | 40 slab | usda-sr-legacy
casserole | Lasagna with meat | lasagna, lasagne, mac and cheese, macaroni and cheese, enchiladas, quiche, frittata, egg bake, shepherds pie, pot pie, stuffing, frozen meal | 67 8 6 15 1.5 1.7 | ~-1.2 | rte chilled | discard | 3-4 | | 40 slab | from-memory
pizza | Pizza | pizzas, flatbread, calzone | 46 11 10 30 2.3 2.5 | ~-3.0 | rte chilled | discard | 3-4 | | 20 slab | from-memory
sandwich | Sandwich with meat or cheese | sandwiches, subs, wrap, wraps, burrito, burritos, breakfast burrito, quesadilla, sausage biscuit, empanadas, tacos | 50 12 9 27 1.7 2.2 | ~-2.0 | rte chilled | discard | 3-4 | freezes badly | 50 lump | from-memory
potato salad | Potato salad | pasta salad, macaroni salad, coleslaw, slaw, deli salad, mashed potatoes, cooked potatoes, baked potatoes | 76 3 8 11 1.3 1.9 | ~-1.5 | rte chilled | discard | 3-5 | freezes badly | 60 lump | usda-sr-legacy
cooked vegetables | Vegetables, cooked | grilled vegetables, roasted vegetables, steamed vegetables, vegetable juice | 88 2.5 0.5 7 2.5 0.8 | ~-0.8 | rte chilled | discard | 3-4 | | 40 slab | from-memory
marinara | Marinara sauce, opened | marinara sauce, spaghetti sauce, pasta sauce, tomato sauce, pizza sauce | 88 1 2 7 1.8 1.7 | ~-1.2 | rte chilled | discard | 4-7 | | 70 cylinder | usda-sr-legacy
salsa | Salsa | pico de gallo, taco sauce, hot sauce, enchilada sauce | 89 2 0 7 1.9 2.4 | ~-1.5 | rte chilled | keep | 7 | | 70 cylinder | usda-sr-legacy
mayonnaise | Mayonnaise, opened | mayo, tartar sauce, horseradish, aioli | 22 1 75 1 0 2.0 | ~-12.0 | rte chilled | over 10 C for 8 h | 60 | freezes badly | 70 cylinder | usda-sr-legacy
creamy dressing | Dressing, creamy, opened | ranch dressing, ranch, blue cheese dressing, caesar dressing, salad dressing, pesto, alfredo sauce, cream sauce, fish sauce, oyster sauce | 46 1.5 44 6 0 2.5 | ~-5.0 | rte chilled | discard | 30 | freezes badly | 60 cylinder | from-memory
vinaigrette | Dressing with vinegar, opened | vinegar dressing, italian dressing, balsamic vinegar, vinegar | 56 0.5 28 12 0 2.5 | ~-5.0 | rte ambient | keep | 90 | | 60 cylinder | from-memory
mustard | Mustard | dijon, yellow mustard | 84 4 3 6 4.0 3.4 | ~-2.0 | rte chilled | keep | 365 | | 50 cylinder | usda-sr-legacy
ketchup | Ketchup | catsup, tomato ketchup, barbecue sauce, bbq sauce, hoisin sauce, steak sauce, worcestershire sauce | 69 1 0 27 0.3 3.0 | ~-6.0 | rte ambient | keep | 180 | | 60 cylinder | from-memory
soy sauce | Soy sauce | tamari, teriyaki sauce | 71 8 0.5 5 0.8 15 | ~-18.0 | rte ambient | keep | ambient | | 50 cylinder | from-memory
jam | Jam | jelly, marmalade, preserves, honey, syrup, maple syrup, chutney | 30 0.4 0 69 1.0 0.2 | ~-12.0 | rte ambient | keep | 180 | | 70 cylinder | from-memory
pickles | Dill pickles | pickle, gherkins, olives, relish, sauerkraut, kimchi, capers, pickled vegetables | 94 0 0 2 1.0 2.5 | ~-2.0 | rte chilled | keep | 30 | freezes badly | 80 cylinder | usda-sr-legacy
peanut butter | Peanut butter | nut butter, almond butter, nuts, peanuts, almonds, tahini | 1 22 51 22 5.0 2.9 | – | rte ambient | keep | ambient | | 80 cylinder | usda-sr-legacy
cooking oil | Oil | olive oil, vegetable oil, lard, shortening, ghee, coconut oil | 0 0 100 0 0 0 | – | rte ambient | keep | ambient | | 70 cylinder | from-memory
bread | Bread, white | sliced bread, buns, rolls, bagels, english muffins, pita, naan, hamburger buns, hot dog buns, muffins, cake, cakes, pancakes, waffles, pastry, cornbread, croissants, doughnuts | 36 9 3 49 2.7 2.0 | ~-8.0 | rte ambient | keep | ambient | air 75 | 100 lump | usda-sr-legacy
tortilla | Tortilla, flour | tortillas, flour tortillas, corn tortillas, lavash | 32 8 6 51 2.5 2.6 | ~-8.0 | rte ambient | keep | ambient | air 30 | 25 slab | usda-sr-legacy
dry snack | Crackers and dry goods | crackers, chips, crisps, cookies, biscuits, granola, granola bars, cereal, trail mix, pretzels, flour, dry pasta, dry rice, uncooked rice, dried fruit, raisins, dates, coffee beans, sugar | 3 9 20 66 6.0 2.0 | – | rte ambient | keep | ambient | air 50 | 60 lump | from-memory
chocolate | Chocolate | candy, candy bar, chocolate bar, sweets, brownies | 1 5 31 59 6.0 2.0 | – | rte ambient | keep | ambient | | 15 slab | from-memory
`;
